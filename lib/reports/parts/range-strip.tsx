import { Line, Path, Rect, Svg } from "@react-pdf/renderer";
import type { RangeStrip } from "../figures";
import { HAIRLINE, INK, TINT } from "../look";

/** Where a reading and its uncertainty lie against the aim. The drawing's own units are percent of its width. */
export function RangeStripPicture({ strip, color }: { readonly strip: RangeStrip; readonly color: string }) {
  const { aimFrom, aimTo, at, low, high } = strip;
  return (
    <Svg width={112} height={11.2} viewBox="0 0 100 10">
      <Line x1={0} y1={5} x2={100} y2={5} stroke={HAIRLINE} strokeWidth={0.5} />
      <Rect x={aimFrom} y={1.5} width={aimTo - aimFrom} height={7} fill={TINT} />
      <Line x1={aimFrom} y1={1.5} x2={aimFrom} y2={8.5} stroke={INK} strokeWidth={0.5} />
      <Line x1={aimTo} y1={1.5} x2={aimTo} y2={8.5} stroke={INK} strokeWidth={0.5} />
      <Line x1={low} y1={5} x2={high} y2={5} stroke={color} strokeWidth={1.4} />
      <Path d="M0 -3.2l2 3.2l-2 3.2l-2 -3.2z" fill={color} transform={`translate(${at}, 5)`} />
    </Svg>
  );
}
