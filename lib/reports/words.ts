import type { Column } from "@/lib/domain/ledger";
import type { Verdict } from "@/lib/engineering/findings";

/** The fixed words of the homeowner packet. Everything else comes with the view, in the same language. */
export type HomeownerWords = {
  readonly title: string;
  readonly job: string;
  readonly promise: string;
  readonly inShort: string;
  readonly forecast: string;
  readonly typicalYear: string;
  readonly installed: string;
  readonly demoData: string;
  readonly howItIsSet: string;
  readonly setting: string;
  readonly setTo: string;
  readonly why: string;
  readonly notRecorded: string;
  readonly measured: string;
  readonly measuredLead: string;
  readonly reading: string;
  readonly aim: string;
  readonly verdict: string;
  readonly notMeasured: string;
  readonly forInformation: string;
  readonly ledger: string;
  readonly ledgerLead: string;
  readonly line: string;
  readonly columns: Readonly<Record<Column, string>>;
  /** What an empty cell of a column says. */
  readonly missing: Readonly<Record<Column, string>>;
  readonly lived: string;
  readonly notLived: string;
  readonly howToRun: string;
  readonly terms: string;
  readonly noTerms: string;
  readonly whenToCall: string;
  readonly cautions: string;
  readonly nothingGiven: string;
  readonly reach: string;
  readonly marks: string;
  readonly verdicts: Readonly<Record<Verdict, string>>;
  readonly verdictMeanings: Readonly<Record<Verdict, string>>;
  readonly page: (page: number, of: number) => string;
  readonly made: string;
  readonly privatePage: string;
  readonly privatePageUse: string;
  readonly privateUntil: (day: string) => string;
};

const english: HomeownerWords = {
  title: "Homeowner packet",
  job: "Job",
  promise: "What was promised",
  inShort: "In short",
  forecast: "What a typical year should be like",
  typicalYear: "In a typical year",
  installed: "What was installed",
  demoData: "Demo data: invented equipment, for demonstration only.",
  howItIsSet: "How it is set, and why",
  setting: "Setting",
  setTo: "Set to",
  why: "Why",
  notRecorded: "not recorded",
  measured: "What was measured",
  measuredLead:
    "Readings taken with instruments at startup. The number after ± says how far the true value may lie from the reading. In the pictures the shaded band is the aim, the lozenge is the reading and the bar through it is that uncertainty.",
  reading: "Reading",
  aim: "Aim",
  verdict: "Verdict",
  notMeasured: "not measured",
  forInformation: "For information",
  ledger: "The ledger",
  ledgerLead:
    "Each line follows one quantity from the design to the life of the house. Here are those that were measured or logged; the company’s file has them all.",
  line: "Line",
  columns: { designed: "Designed", set: "Set", measured: "Measured", lived: "Lived" },
  missing: { designed: "not given", set: "not recorded", measured: "not measured", lived: "not logged" },
  lived: "How the house has lived",
  notLived:
    "Not measured yet. After some weeks of use the house’s own temperature and humidity log is reviewed and compared with this packet.",
  howToRun: "How to run it",
  terms: "Warranty and maintenance",
  noTerms: "No terms of warranty or maintenance are promised in this packet; ask the company.",
  whenToCall: "When to call",
  cautions: "Caution",
  nothingGiven: "Nothing has been recorded here yet.",
  reach: "How to reach us",
  marks: "How to read the marks",
  verdicts: {
    meets: "Meets",
    "falls short": "Falls short",
    "can't tell": "Can’t tell",
    "not measured": "Not measured",
  },
  verdictMeanings: {
    meets: "within the aim, uncertainty included",
    "falls short": "outside the aim, uncertainty included",
    "can't tell": "the readings are not enough to say",
    "not measured": "no reading was taken",
  },
  page: (page, of) => `Page ${page} of ${of}`,
  made: "Made on",
  privatePage: "This packet on the web",
  privatePageUse: "Point a phone’s camera at the code to open or save this packet.",
  privateUntil: (day) =>
    `Private to whoever has the code. It opens until ${day}; your contractor can end it earlier.`,
};

const spanish: HomeownerWords = {
  title: "Cuaderno del propietario",
  job: "Trabajo",
  promise: "Lo que se prometió",
  inShort: "En pocas palabras",
  forecast: "Cómo debería ser un año típico",
  typicalYear: "En un año típico",
  installed: "Lo que se instaló",
  demoData: "Datos de demostración: equipo inventado, solo para mostrar el programa.",
  howItIsSet: "Cómo está ajustado y por qué",
  setting: "Ajuste",
  setTo: "Valor",
  why: "Por qué",
  notRecorded: "sin registrar",
  measured: "Lo que se midió",
  measuredLead:
    "Lecturas tomadas con instrumentos en la puesta en marcha. El número después de ± dice cuánto puede apartarse el valor verdadero de la lectura. En los dibujos, la banda sombreada es el objetivo, el rombo es la lectura y la barra que lo cruza es esa incertidumbre.",
  reading: "Lectura",
  aim: "Objetivo",
  verdict: "Resultado",
  notMeasured: "sin medir",
  forInformation: "Informativo",
  ledger: "El libro mayor",
  ledgerLead:
    "Cada línea sigue una magnitud desde el diseño hasta la vida de la casa. Aquí están las que se midieron o registraron; el archivo de la empresa las tiene todas.",
  line: "Línea",
  columns: { designed: "Diseñado", set: "Ajustado", measured: "Medido", lived: "Vivido" },
  missing: { designed: "sin dato", set: "sin registrar", measured: "sin medir", lived: "sin registro" },
  lived: "Cómo ha vivido la casa",
  notLived:
    "Todavía sin medir. Después de unas semanas de uso se revisa el registro de temperatura y humedad de la propia casa y se compara con este cuaderno.",
  howToRun: "Cómo usarlo",
  terms: "Garantía y mantenimiento",
  noTerms: "Este cuaderno no promete garantía ni mantenimiento; pregunte a la empresa.",
  whenToCall: "Cuándo llamar",
  cautions: "Precaución",
  nothingGiven: "Aquí todavía no se ha registrado nada.",
  reach: "Cómo comunicarse con nosotros",
  marks: "Cómo leer las marcas",
  verdicts: {
    meets: "Cumple",
    "falls short": "No alcanza",
    "can't tell": "No se sabe",
    "not measured": "Sin medir",
  },
  verdictMeanings: {
    meets: "dentro del objetivo, con incertidumbre",
    "falls short": "fuera del objetivo, con incertidumbre",
    "can't tell": "las lecturas no bastan para decirlo",
    "not measured": "no se tomó lectura",
  },
  page: (page, of) => `Página ${page} de ${of}`,
  made: "Hecho el",
  privatePage: "Este cuaderno en la red",
  privatePageUse: "Apunte la cámara de un teléfono al código para abrir o guardar este cuaderno.",
  privateUntil: (day) =>
    `Privado para quien tenga el código. Abre hasta el ${day}; su contratista puede cerrarlo antes.`,
};

export const HOMEOWNER_WORDS: Readonly<Record<"en" | "es", HomeownerWords>> = { en: english, es: spanish };
