/** Short cautions for screens and packets. Each defers to codes, the manufacturer and certified practice. */
export const refrigerantCautions = {
  openCircuit:
    "Only a technician certified under EPA section 608 opens the circuit. Recover first, never vent. The manufacturer's instructions and local codes govern.",
  pressure:
    "Refrigerant and test gas are under high pressure: eye protection and gloves, rated hoses, release slowly. The manufacturer's instructions govern.",
  nitrogen:
    "Pressure-test with dry nitrogen only, through a regulator with a relief valve, up to the pressure on the nameplate. Never oxygen or air.",
  flammable:
    "Mildly flammable (A2L) refrigerant: ventilate, no ignition sources, tools and recovery machine rated for it. The manufacturer's charge and room table and local codes govern.",
} as const;
