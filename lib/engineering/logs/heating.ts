/** Below this outdoors no house is cooled: as the forecast assumes it (common practice, no source). */
const NO_COOLING_BELOW_F = 55;
/** A stretch of running that warms the room by this while it is colder outdoors than in is heating. */
const WARMS_BY_F = 0.3;
/** So much colder outdoors, °F: on a summer's night a running coil may be behind the room for a while. */
const COLDER_BY_F = 5;
const ON = 0.003;

type Channels = {
  readonly indoorF: Float64Array | null;
  readonly outdoorF: Float64Array | null;
  readonly auxiliaryShare: Float64Array | null;
  /** 1 where the sample does not follow the one before. */
  readonly afterGap: Uint8Array;
};

/**
 * The compressor's share where it can have cooled. A heat pump's log says when the compressor ran, not which way: stretches of
 * running that heat become gaps, so that nothing about cooling is told from them. Heating is a stretch with auxiliary heat in
 * it, or below 55 °F outdoors, or one that warms the room while it is 5 °F colder
 * outdoors.
 *
 * @param share - Share of each interval with any stage on, 0 to 1; NaN is a gap.
 * @param channels - Temperatures in °F and the auxiliary heat's share, 0 to 1; null where the log has none.
 * @returns Shares, 0 to 1; NaN where the compressor heated.
 * @see common practice, no source; the room's warming follows from the conservation of energy.
 */
export function coolingOnly(share: Float64Array, channels: Channels): Float64Array {
  const { outdoorF, auxiliaryShare, afterGap } = channels;
  if (outdoorF === null && auxiliaryShare === null) return share;
  const cooling = Float64Array.from(share);
  let first = -1;
  for (let index = 0; index <= share.length; index++) {
    const isOn = (share[index] ?? Number.NaN) > ON && (first < 0 || afterGap[index] === 0);
    if (isOn && first < 0) first = index;
    if (isOn || first < 0) continue;
    if (isHeating(first, index - 1, channels)) cooling.fill(Number.NaN, first, index);
    // A stretch may begin right behind missing time.
    first = (share[index] ?? Number.NaN) > ON ? index : -1;
  }
  return cooling;
}

function isHeating(first: number, last: number, { indoorF, outdoorF, auxiliaryShare }: Channels): boolean {
  let [outdoor, outdoorCount, auxiliary] = [0, 0, 0];
  for (let index = first; index <= last; index++) {
    auxiliary = Math.max(auxiliary, auxiliaryShare?.[index] ?? 0);
    const out = outdoorF?.[index] ?? Number.NaN;
    if (Number.isNaN(out)) continue;
    outdoor += out;
    outdoorCount++;
  }
  if (auxiliary > ON) return true;
  if (outdoorCount === 0) return false;
  const outF = outdoor / outdoorCount;
  if (outF < NO_COOLING_BELOW_F) return true;
  // The sample before the stretch is the room as it was found.
  const from = indoorF?.[Math.max(0, first - 1)] ?? Number.NaN;
  const to = indoorF?.[last] ?? Number.NaN;
  return outF < from - COLDER_BY_F && to - from >= WARMS_BY_F;
}
