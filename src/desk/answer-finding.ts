import { isAbout, meantOf, type Finding, type Fitting } from '../garment/index.ts';

/** Acts on the answers to findings, each giving a new fitting. */
type Act = (f: Fitting) => Fitting;

/** It is taken as not answered (any more). */
export const askAgain =
  (finding: Finding): Act =>
  ({ meant = [], ...rest }) => {
    const left = meant.filter((one) => !isAbout(one, finding));
    return left.length === 0 ? rest : { ...rest, meant: left };
  };

/** It is meant so, for that reason; `on` is the day. An earlier answer to the same finding is replaced. */
export const meantSo =
  (finding: Finding, reason: string, on: string): Act =>
  (f) => {
    const left = askAgain(finding)(f);
    return { ...left, meant: [...(left.meant ?? []), meantOf(finding, reason, on)] };
  };
