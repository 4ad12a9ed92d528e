import type { Role } from "@/lib/domain/roles";

/** The demo's password. It opens invented data only, and is printed at every start. */
export const DEMO_PASSWORD = "damp air, dry house";

export type DemoPerson = { readonly email: string; readonly name: string; readonly role: Role };

/** Invented people. The office manager of the second company works in both. */
export const TIDEWILLOW_PEOPLE = {
  owner: { email: "owner@tidewillow.example", name: "Marisol Vantreight-Boone", role: "owner" },
  office: { email: "office@tidewillow.example", name: "Dewey Okonjo-Hale", role: "office" },
  tech: { email: "tech@tidewillow.example", name: "Inés Barragán-Todd", role: "tech" },
  secondTech: { email: "tech2@tidewillow.example", name: "Rusty Calloway-Finch", role: "tech" },
  officeOfBoth: { email: "office@hickorane.example", name: "Bettina Lane-Schwarzwald", role: "office" },
} as const satisfies Readonly<Record<string, DemoPerson>>;

export const HICKORANE_PEOPLE = {
  owner: { email: "owner@hickorane.example", name: "Harlan Pruett-Adeyemi", role: "owner" },
  office: TIDEWILLOW_PEOPLE.officeOfBoth,
  tech: { email: "tech@hickorane.example", name: "Cyrus Appleyard-Nkemelu", role: "tech" },
  secondTech: { email: "tech2@hickorane.example", name: "Wren Tolliver-Haas", role: "tech" },
} as const satisfies Readonly<Record<string, DemoPerson>>;
