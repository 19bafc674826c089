import type { Units } from '../units/units.ts';

const IN = {
  us: { warmth: '68 °F', rain: 'an inch', thaw: '41 °F' },
  metric: { warmth: '20 °C', rain: '25 mm', thaw: '5 °C' },
};

/** Drywake’s own terms, each in a sentence or two. */
export const termsIn = (units: Units) => ({
  'breakdown day': `As much breakdown as one day brings in moist soil at ${IN[units].warmth}. Cold or dry days bring only a part of one; they add up over a season the way heat units do.`,
  'label-basis rain': `The rain that a label’s interval is taken to reckon with: about ${IN[units].rain} every twelfth day.`,
  'warm rain': `Rain that falls on thawed, snow-free soil above ${IN[units].thaw}. Only that rain helps to break a residual down.`,
  'label date':
    'The date of spraying plus your label’s rotation interval for the crop. Never plant before it.',
  'clear date':
    'The first day, not before the label date, from which the odds are down to your limit and stay there.',
  'odds limit':
    'The chance of harm to the crop that you are willing to accept. 2 in 20 means: of twenty seasons and soils like yours, two may end in harm.',
  stretch:
    'How many times the label’s interval the field really needs: days from spraying to the clear date, over days to the label date.',
  'dry third':
    'The past years sorted by warm rain between spraying and label date: the third with the least. The middle and the wet third follow.',
});

export type TermName = keyof ReturnType<typeof termsIn>;
