export { answerCalls, Caller } from './call.ts';
export { Latest } from './latest.ts';
export { heard, newsOf, type News } from './news.ts';
export { reuse } from './reuse.ts';
