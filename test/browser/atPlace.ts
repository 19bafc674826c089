import type { Page } from 'playwright-core';

/** A place by its address, with what stands there once it has filled itself, and what is pressed for that to come. */
export type Place = readonly [path: string, waitFor: string, press?: string];

/** The look back on past years of an answer, of a few years so that it is soon there. */
export const LOOK_BACK: Place = [
  '?v=1&residual=flumioxazin&appliedOn=2026-08-14&crop=lentil&plantOn=2027-05-10&station=demo-invented&baseFrom=2005',
  'look-back-figures',
  'look-back',
];

/** Leads a page to a place and waits until it has filled itself. */
export async function goToPlace(page: Page, address: string, [path, waitFor, press]: Place): Promise<void> {
  await page.goto(`${address}${path}`);
  if (press !== undefined) await page.getByTestId(press).click();
  await page.getByTestId(waitFor).first().waitFor();
}
