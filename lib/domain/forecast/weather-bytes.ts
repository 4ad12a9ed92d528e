import { WEATHER_CHANNELS, type Weather } from "@/lib/engineering/weather";

/*
 * A weather year as bytes, so that a browser need not read the text file again: four bytes with the length of a JSON head, the head padded to
 * a multiple of eight, then each channel's hours as 64-bit floats (little-endian, as every machine this runs on), then month, day and hour.
 * The floats are those the server computes with, so both give the same forecast.
 */

type Head = Pick<Weather, "place" | "hourCount" | "gaps">;

export function packWeather(weather: Weather): Uint8Array<ArrayBuffer> {
  const { place, hourCount, gaps } = weather;
  const text = JSON.stringify({ place, hourCount, gaps } satisfies Head);
  const head = new TextEncoder().encode(text + " ".repeat((8 - ((4 + byteLength(text)) % 8)) % 8));
  const bytes = new Uint8Array(4 + head.length + hourCount * (8 * WEATHER_CHANNELS.length + 3));
  new DataView(bytes.buffer).setUint32(0, head.length, true);
  bytes.set(head, 4);
  let at = 4 + head.length;
  for (const channel of WEATHER_CHANNELS) {
    new Float64Array(bytes.buffer, at, hourCount).set(weather[channel]);
    at += 8 * hourCount;
  }
  for (const count of [weather.month, weather.day, weather.hour]) {
    bytes.set(count, at);
    at += hourCount;
  }
  return bytes;
}

/** @throws Error when the bytes are not those of a packed year. */
export function unpackWeather(buffer: ArrayBuffer): Weather {
  const length = buffer.byteLength < 4 ? 0 : new DataView(buffer).getUint32(0, true);
  const whole = length > 0 && 4 + length <= buffer.byteLength;
  const head = whole
    ? (JSON.parse(new TextDecoder().decode(new Uint8Array(buffer, 4, length))) as Head)
    : null;
  const hours = head?.hourCount ?? 0;
  if (head === null || buffer.byteLength !== 4 + length + hours * (8 * WEATHER_CHANNELS.length + 3))
    throw new Error("These bytes are no weather year.");
  let at = 4 + length;
  const channels = WEATHER_CHANNELS.map((channel) => {
    const values = new Float64Array(buffer, at, hours);
    at += 8 * hours;
    return [channel, values] as const;
  });
  const counts = (["month", "day", "hour"] as const).map((name, place) => [
    name,
    new Uint8Array(buffer, at + place * hours, hours),
  ]);
  return { ...head, ...Object.fromEntries([...channels, ...counts]) } as Weather;
}

const byteLength = (text: string) => new TextEncoder().encode(text).length;
