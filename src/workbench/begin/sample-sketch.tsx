/** Fronts of the sample garments as one would chalk them on the table; left and right halves mirror about x = 60. */
const SKETCHES: Readonly<Record<string, { readonly half: string; readonly whole?: string }>> = {
  'stage-bodice': {
    half: 'M60 18Q52 18 50 12L46 20 30 27 17 66 28 70 36 48Q39 60 37 70 34 80 35 96L60 99M36 48Q46 52 48 62 50 76 47 98M36 48 34 38',
    whole: 'M60 18V99',
  },
  'a-line-skirt': {
    half: 'M60 20H43V26H60M43 26Q36 42 26 100 44 105 60 105M50 26 49 40M36 58H50V72Q50 76 46 76H40Q35 76 35 72Z',
  },
  'knit-tee': {
    half: 'M60 30Q50 28 48 18L44 20 30 27 18 48 30 54 36 46Q39 58 37 70 35 84 36 102H60M60 34Q47 32 44 20M21 43 33 49',
  },
  'chorus-smock': {
    half: 'M60 26Q52 25 50 16L44 18 32 24 20 60 29 63 35 44V40M60 44H35V40M35 44Q28 76 25 100 44 104 60 104M56 44V58M50 44V54M44 44V60M39 44V52',
  },
  'work-trousers': {
    half: 'M60 14H42V20H60M42 20Q35 34 34 50L36 106H53L60 50M42 20Q44 32 38 38M48 60V104',
    whole: 'M60 20V50M60 20Q70 34 62 44',
  },
};

/** A sample garment drawn small, so that it is recognised before it is read. */
export function SampleSketch({ id }: { id: string }) {
  const sketch = SKETCHES[id];
  if (!sketch) return null;
  return (
    <svg viewBox="0 0 120 120" className="sketch" aria-hidden="true">
      <path d={sketch.half} />
      <path d={sketch.half} transform="matrix(-1 0 0 1 120 0)" />
      {sketch.whole && <path d={sketch.whole} />}
    </svg>
  );
}
