import { say } from '../../garment/index.ts';
import type { LayJob } from '../job/lay-job.ts';
import type { Spread } from './spread.ts';
import { foldOffStripes } from '../stripes/stripes.ts';
import type { StripForms } from '../search/strip.ts';

/** A job no arrangement can satisfy, told before any search. */
export class LayImpossible extends Error {
  readonly code:
    | 'too-wide'
    | 'too-long'
    | 'pins-clash'
    | 'pin-outside'
    | 'nothing-usable'
    | 'fold-off-stripes'
    | 'fold-unknown';
  /** Piece at fault. */
  readonly piece: string;
  /** Full width of cloth (or its length for `too-long`) that would do, mm. */
  readonly needs: number;
  constructor(code: LayImpossible['code'], piece: string, needs: number, message: string) {
    super(message);
    this.name = 'LayImpossible';
    this.code = code;
    this.piece = piece;
    this.needs = needs;
  }
}

/** @throws LayImpossible where a piece fits in none of its turns, or pinned pieces leave the cloth. */
export function checkJob(job: LayJob, spread: Spread, strip: StripForms): void {
  if (strip.width <= 0) {
    throw new LayImpossible(
      'nothing-usable',
      '',
      2 * job.selvage,
      'The cloth is narrower than its selvages: nothing is left to cut from.',
    );
  }
  if (job.fold === 'crosswise' && (job.flaws.length > 0 || job.remnant)) {
    throw new LayImpossible(
      'fold-unknown',
      '',
      job.width,
      'Where a spoilt place lands on cloth folded crosswise depends on where it is folded. Lay it open, or fold it lengthwise.',
    );
  }
  const stripes = foldOffStripes(job);
  if (stripes !== null) {
    throw new LayImpossible(
      'fold-off-stripes',
      '',
      job.width,
      `Folded like this the stripes of the two layers do not lie on one another. ${stripes}`,
    );
  }
  spread.shapes.forEach((shape, s) => {
    const forms = strip.forms.filter((f) => f.shape === s);
    const slack = 1e-6;
    const pin = strip.pinned[strip.itemShape.indexOf(s)];
    if (pin) {
      const f = forms[0]!;
      const out =
        pin.x < -f.box[0] - slack ||
        pin.y < f.low - slack ||
        pin.y > f.high + slack ||
        pin.x + f.box[2] > strip.most + slack;
      if (out) {
        throw new LayImpossible(
          'pin-outside',
          shape.piece.piece,
          0,
          `${shape.piece.name} is pinned partly off the cloth. Move it, or let it go.`,
        );
      }
      return;
    }
    const lacking = Math.min(...forms.map((f) => f.low - f.high));
    if (lacking > slack) {
      // Folded cloth needs what is lacking once for each layer across.
      const layers = job.fold === 'double' ? 4 : job.fold === 'lengthwise' ? 2 : 1;
      const needs = job.width + layers * lacking;
      throw new LayImpossible(
        'too-wide',
        shape.piece.piece,
        needs,
        `${shape.piece.name} is wider than this cloth${layers > 1 ? ' folded' : ''} by ${say(lacking)}. Cloth ${say(needs)} wide would do` +
          (layers > 1 ? ', or lay it open in a single layer.' : '.'),
      );
    }
    const long = Math.min(...forms.map((f) => f.box[2] - f.box[0]));
    if (long > strip.most + slack) {
      const needs = (long - job.gap) * spread.lengths;
      throw new LayImpossible(
        'too-long',
        shape.piece.piece,
        needs,
        `${shape.piece.name} is longer than this cloth. It needs ${say(needs)}.`,
      );
    }
  });
}
