/** A bare vertical axis with its title lying above the plot, flush with the chart's left edge. */
export const valueAxis = (title: string, leftPx: number) => ({
  title,
  titleAlign: 'left' as const,
  titleAnchor: 'end' as const,
  titleAngle: 0,
  titleX: -leftPx,
  titleY: -14,
  titleBaseline: 'bottom' as const,
  grid: false,
  domain: false,
  ticks: false,
  labelPadding: 8,
});
