export * from './lay-job.ts';
export { lay, layBest, layTogether, startLay, type LayBudget, type LayOptions, type LayRun } from './lay.ts';
export { crew, handWork, type CrewOptions, type FromHand, type Hand, type ToHand } from './crew.ts';
export { startStrip, type StripRun } from './strip-run.ts';
export { LayImpossible } from './lay-limits.ts';
export { proveLay } from './prove-lay.ts';
export { unfold, type CutPart } from './unfold.ts';
export { openedOutline } from './cutting-outline.ts';
export { garmentMatches, type Match } from './garment-matches.ts';
export { matchStripes } from './stripes.ts';
export { cuttingPiece } from './cutting-piece.ts';
export {
  beforeWashing,
  convertYardage,
  doubtPurchases,
  metresUp,
  purchase,
  yardageColumn,
  yardsUp,
  type ClothOffer,
  type Purchase,
} from './buy.ts';
export { YARDAGE_ROWS, YARDAGE_WIDTHS } from './yardage-table.ts';
export {
  clothNeeds,
  jobFor,
  repeatRule,
  stripeFindings,
  type ClothChoice,
  type ClothNeed,
} from './cloth-needs.ts';
export { notions, type Notion } from './notions.ts';
export { bundles, cuttingList, cuttingOrder, type Bundle, type CuttingLine } from './cutting-list.ts';
export { cuttingCautions, type CuttingTool } from './cutting-cautions.ts';
export { layMeasures, longEdges, measureWords, type GrainEnd } from './lay-measures.ts';
export { drawLay, type LayDrawing, type LayLayer, type LayStroke, type LyingPiece } from './lay-drawing.ts';
export { laySvg } from './lay-svg.ts';
export { projectorPages } from './projector.ts';
export type { Kept } from './kept.ts';
export type { SavedSearch } from './strip-search.ts';
export { stripForms, type StripForms, type StripJob, type StripShape, type Turn } from './strip.ts';
