import { Image, Text, View } from "@react-pdf/renderer";
import { row, small } from "../look";
import { keyed } from "../parts/keyed";
import { tagged } from "../parts/tags";
import type { PrintedPhoto } from "./view";

const WIDTH = 232;
const HIGHEST = 190;

/** Photographs two in a row, each with its words; a row is never broken. */
export function Photos({ photos }: { readonly photos: readonly PrintedPhoto[] }) {
  const rows = Array.from({ length: Math.ceil(photos.length / 2) }, (_, at) =>
    photos.slice(at * 2, at * 2 + 2),
  );
  return (
    <View>
      {keyed(rows).map(({ key, item }) => (
        <View key={key} wrap={false} style={{ ...row, gap: 16, marginBottom: 10 }}>
          {keyed(item).map(({ key: photoKey, item: photo }) => (
            <View key={photoKey} style={{ width: WIDTH }}>
              <Image
                {...tagged("Figure", photo.caption)}
                src={{ data: seenAsBuffer(photo.jpeg), format: "jpg" }}
                style={fitted(photo)}
              />
              <Text style={{ ...small, marginTop: 2 }}>{photo.caption}</Text>
            </View>
          ))}
        </View>
      ))}
    </View>
  );
}

/** The same bytes, not a copy of them: forty photographs are a packet's largest part. */
function seenAsBuffer({ buffer, byteOffset, byteLength }: Uint8Array): Buffer {
  return Buffer.from(buffer, byteOffset, byteLength);
}

function fitted({ widthPx, heightPx }: PrintedPhoto) {
  const scale = Math.min(WIDTH / widthPx, HIGHEST / heightPx);
  return { width: widthPx * scale, height: heightPx * scale };
}
