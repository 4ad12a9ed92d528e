import type { ReactNode } from "react";
import { type DuctCurveInput, ductCurve } from "@/lib/charts/duct-curve";
import { ChartFigure } from "./chart-figure";

type Props = Omit<DuctCurveInput, "width"> & { readonly title: string; readonly note?: ReactNode };

/** The fan table's curves, the ducts across them, and where they meet. */
export function DuctCurve({ title, note, ...data }: Props) {
  return (
    <ChartFigure
      title={title}
      note={note}
      geometryAt={(width) => ductCurve({ ...data, width })}
      empty="No fan table is entered yet. Paste the maker's in the catalog."
    />
  );
}
