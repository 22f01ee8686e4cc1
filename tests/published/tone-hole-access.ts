import { PAD_MODELS, type PadEnd } from '../../src/acoustics/index.ts';

export { flangedEndLength, innerLength, matchingLength, seriesLength } from '../../src/acoustics/index.ts';

/** The published fit, addressed by its id, in its source's letters; metres. */
export function publishedParallelFitOf(pad: {
  b: number;
  w: number;
  d: number;
  h: number;
  hinge?: number;
}): PadEnd {
  const model = PAD_MODELS.find((m) => m.id === 'published-parallel-fit')!;
  return model.endOf({
    holeRadius: pad.b,
    rimThickness: pad.w,
    padRadius: pad.d,
    padThickness: 0.004,
    hingeDistance: pad.hinge ?? Infinity,
    hingeHeight: 0,
    centreHeight: pad.h,
  });
}
