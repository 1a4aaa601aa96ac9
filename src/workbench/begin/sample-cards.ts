/** The sample patterns as they are offered before any of them is drafted. A test holds this list to the samples' own. */
export const SAMPLE_CARDS = [
  {
    id: 'stage-bodice',
    name: 'Stage bodice',
    say: 'Lined, panelled, to the high hip, with stand collar and set-in sleeves. Ten sizes.',
  },
  {
    id: 'a-line-skirt',
    name: 'A-line skirt',
    say: 'Darted, with waistband, side zip, patch pockets and a lining if wanted. Ten sizes.',
  },
  {
    id: 'knit-tee',
    name: 'Knit tee',
    say: 'Close, short-sleeved, for a knit; smaller than the body, with a neckband. Eight sizes.',
  },
  {
    id: 'chorus-smock',
    name: 'Chorus smock',
    say: 'A child’s smock gathered to a yoke; no cords. Nine sizes by height.',
  },
  {
    id: 'work-trousers',
    name: 'Work trousers',
    say: 'Straight woven trousers with fly front, waistband and side pockets. Ten sizes.',
  },
] as const;
