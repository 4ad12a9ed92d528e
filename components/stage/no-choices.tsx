import type { ReactNode } from "react";
import { TextLink } from "@/components/ui/button";
import type { ReferenceFieldDef } from "@/lib/domain/fields";

/** Why a list is empty, and where what it offers is made. */
export const NO_CHOICES: Readonly<Record<ReferenceFieldDef["to"], ReactNode>> = {
  equipment: (
    <>
      The catalog holds no equipment yet. <TextLink href="/catalog/new">Add a model</TextLink>, then choose it
      here.
    </>
  ),
  control: (
    <>
      The catalog holds no thermostat yet. <TextLink href="/catalog/thermostats/new">Add one</TextLink>, then
      choose it here.
    </>
  ),
  instrument: (
    <>
      The catalog holds no instrument yet. <TextLink href="/catalog/instruments/new">Add one</TextLink> with
      its accuracy, then choose it here.
    </>
  ),
  "capacity setting": "The settings are those of the equipment: choose it first, in the equipment selection.",
  "airflow setting":
    "The settings are those of the equipment’s fan table. Choose the equipment first; if it is chosen, its fan table is not in the catalog yet.",
  log: "No log of the house has been imported yet.",
};
