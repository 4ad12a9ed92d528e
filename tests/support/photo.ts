import sharp from "sharp";

/** A small picture made once, as a phone sends it. */
export const PHOTO = new Uint8Array(
  await sharp({ create: { width: 64, height: 48, channels: 3, background: "#8a5a2b" } })
    .jpeg()
    .toBuffer(),
);

/** A picture held sideways, with a place and a time in its metadata as a camera writes them. */
export async function photoWithMetadata(): Promise<Uint8Array> {
  const plain = sharp({ create: { width: 320, height: 200, channels: 3, background: "#2b5a8a" } });
  return new Uint8Array(
    await plain
      .jpeg()
      .withExif({
        IFD0: { Make: "Camera of a test", DateTime: "2026:07:01 12:00:00" },
        IFD3: { GPSLatitudeRef: "N", GPSLatitude: "29/1 30/1 0/1" },
      })
      .withMetadata({ orientation: 6 })
      .toBuffer(),
  );
}
