import { Image } from "@react-pdf/renderer";
import type { PacketBrand } from "../homeowner/view";
import { tagged } from "./tags";

/** The company's logo, or nothing where it has none. */
export function CompanyLogo({ brand, height }: { readonly brand: PacketBrand; readonly height: number }) {
  if (brand.logoPng === null) return null;
  return (
    <Image
      {...tagged("Figure", brand.companyName)}
      src={{ data: Buffer.from(brand.logoPng), format: "png" }}
      style={{ height, objectFit: "contain", objectPosition: "right" }}
    />
  );
}
