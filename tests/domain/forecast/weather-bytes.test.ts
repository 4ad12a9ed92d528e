import { expect, test } from "vitest";
import { packWeather, unpackWeather } from "@/lib/domain/forecast";
import { stableText } from "@/lib/engineering/simulation";
import { COASTAL, steadyWeather } from "../../engineering/simulation/fixtures";

test("a weather year comes back from its bytes as it was, to the last bit, gaps and odd names too", () => {
  for (const weather of [
    COASTAL,
    { ...steadyWeather(24, 70, 0.01), place: { ...COASTAL.place, city: "Łódź Ñandú" } },
  ]) {
    const back = unpackWeather(packWeather(weather).buffer);
    expect(Object.keys(back).toSorted()).toEqual(Object.keys(weather).toSorted());
    // NaN of a gap is no JSON number: both show it as null.
    expect(stableText(back)).toBe(stableText(weather));
    expect(back.dewPointF[0]).toBe(weather.dewPointF[0]);
  }
});

test("bytes that are no year are refused", () => {
  const bytes = packWeather(steadyWeather(24, 70, 0.01));
  for (const wrong of [new ArrayBuffer(0), new ArrayBuffer(3), bytes.buffer.slice(0, -8)])
    expect(() => unpackWeather(wrong)).toThrow("These bytes are no weather year.");
});
