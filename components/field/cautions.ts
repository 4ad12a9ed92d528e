import type { PlainValue } from "@/lib/domain/merge-fields";
import type { Danger, WalkScreen } from "@/lib/domain/startup-walk";

/** Short, and each defers to who decides. */
export const CAUTIONS: Readonly<Record<Danger, string>> = {
  mains:
    "Mains voltage: meter and leads rated for it, one hand, lock out before touching. Local electrical code and licensed practice govern.",
  pressure:
    "Refrigerant and nitrogen are under pressure: eye protection and gloves, a regulator on nitrogen, never above the maker’s test pressure. Certified technicians only.",
  flammable:
    "This refrigerant burns: no flames or sparks, air the room, tools made for it. Local codes govern.",
  heat: "Hot surfaces and elements: gloves; let them cool before touching.",
  moving: "Keep hands, sleeves and leads away from fans and belts; they start by themselves.",
};

const FLAMMABLE: ReadonlySet<PlainValue> = new Set<PlainValue>(["R-32", "R-454B"]);

/** The dangers of a screen as far as this job has them. Unknown refrigerant counts as flammable. */
export function cautionFor(
  screen: WalkScreen,
  values: Readonly<Record<string, PlainValue>>,
): readonly Danger[] {
  const refrigerant = values.refrigerant ?? null;
  const mayBurn = refrigerant === null || FLAMMABLE.has(refrigerant);
  return screen.dangers.filter((danger) => danger !== "flammable" || mayBurn);
}
