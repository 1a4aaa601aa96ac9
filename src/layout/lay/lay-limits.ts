import type { LayJob } from '../job/lay-job.ts';
import type { Spread } from './spread.ts';
import { foldOffStripes } from '../stripes/stripes.ts';
import type { StripForms } from '../search/strip.ts';
import { LayImpossible } from '../words/words-table.ts';

/** @throws LayImpossible where a piece fits in none of its turns, or pinned pieces leave the cloth. */
export function checkJob(job: LayJob, spread: Spread, strip: StripForms): void {
  if (strip.width <= 0) {
    throw LayImpossible.of('lay-nothing-usable', '', 2 * job.selvage, {});
  }
  if (job.fold === 'crosswise' && (job.flaws.length > 0 || job.remnant)) {
    throw LayImpossible.of('lay-fold-unknown', '', job.width, {});
  }
  const stripes = foldOffStripes(job);
  if (stripes !== null) {
    throw LayImpossible.of('lay-fold-off-stripes', '', job.width, { off: stripes });
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
        throw LayImpossible.of('lay-pin-outside', shape.piece.piece, 0, { piece: shape.piece.name });
      }
      return;
    }
    const lacking = Math.min(...forms.map((f) => f.low - f.high));
    if (lacking > slack) {
      // Folded cloth needs what is lacking once for each layer across.
      const layers = job.fold === 'double' ? 4 : job.fold === 'lengthwise' ? 2 : 1;
      const needs = job.width + layers * lacking;
      throw LayImpossible.of('lay-too-wide', shape.piece.piece, needs, {
        piece: shape.piece.name,
        lacking,
        needs,
        folded: layers > 1,
      });
    }
    const long = Math.min(...forms.map((f) => f.box[2] - f.box[0]));
    if (long > strip.most + slack) {
      const needs = (long - job.gap) * spread.lengths;
      throw LayImpossible.of('lay-too-long', shape.piece.piece, needs, { piece: shape.piece.name, needs });
    }
  });
}
