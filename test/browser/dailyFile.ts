/** A small by-station file of an invented station: years of rain and temperatures from 2021 on. */
export function dailyFile(id: string, years = 1): string {
  const lines: string[] = [];
  for (let day = 0; day < 365 * years; day++) {
    const date = new Date(Date.UTC(2021, 0, 1 + day)).toISOString().slice(0, 10).replaceAll('-', '');
    for (const [element, value] of [
      ['PRCP', (day * 7) % 60],
      ['TMAX', 150],
      ['TMIN', 40],
    ]) {
      lines.push(`${id},${date},${element},${value},,,N,`);
    }
  }
  return `${lines.join('\n')}\n`;
}
