export * from './job/lay-job.ts';
export {
  lay,
  layBest,
  layTogether,
  startLay,
  type LayBudget,
  type LayOptions,
  type LayRun,
} from './lay/lay.ts';
export { crew, handWork, type CrewOptions, type FromHand, type Hand, type ToHand } from './search/crew.ts';
export type { StripRun } from './search/strip-run.ts';
export { LayImpossible, layoutFinding, LAYOUT_WORDS } from './words/words-table.ts';
export { proveLay } from './lay/prove-lay.ts';
export { unfold, type CutPart } from './job/unfold.ts';
export { garmentMatches, type Match } from './job/garment-matches.ts';
export { cuttingPieces } from './job/cutting-pieces.ts';
export { askFor, beforeWashing, purchase, yardsUp, type ClothOffer, type Purchase } from './shop/buy.ts';
export { clothNeeds, jobFor, stripeFindings, type ClothChoice, type ClothNeed } from './shop/cloth-needs.ts';
export { notions, type Notion } from './shop/notions.ts';
export { bundles, cuttingOrder, type Bundle, type CuttingLine } from './shop/cutting-list.ts';
export { cuttingCautions } from './shop/cutting-cautions.ts';
export { placeWords, type Block } from './drawn/lay-label.ts';
export { layMeasures, longEdges, measureWords, type GrainEnd } from './drawn/lay-measures.ts';
export {
  drawLay,
  type LayDrawing,
  type LayLayer,
  type LayStroke,
  type LyingPiece,
} from './drawn/lay-drawing.ts';
export { laySvg } from './drawn/lay-svg.ts';
export { projectorPages } from './drawn/projector.ts';
export type { Kept } from './search/kept.ts';
export type { SavedSearch } from './search/strip-search.ts';
export { stripForms, type StripForms, type StripJob, type StripShape, type Turn } from './search/strip.ts';
