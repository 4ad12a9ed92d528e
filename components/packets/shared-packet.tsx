import { BrandStyle } from "@/components/shell/brand";
import { Notice } from "@/components/ui/notice";
import type { PacketKind, PacketLanguage } from "@/lib/domain/packets";

type Props = {
  readonly packet: {
    readonly kind: PacketKind;
    readonly language: PacketLanguage;
    readonly companyName: string;
    readonly phone: string;
    readonly revision: number;
    readonly pages: number;
    readonly createdAt: string;
    readonly expiresAt: string;
    readonly sha256: string;
    readonly isReplaced: boolean;
    readonly accentColor: string | null;
  };
  readonly href: string;
};

const WORDS = {
  en: {
    kinds: {
      homeowner: "Homeowner packet",
      crew: "Crew sheet",
      file: "File packet",
      review: "Humidity review",
    },
    made: "Made on",
    pages: "Pages",
    until: "This page opens until",
    open: "Open the packet (PDF)",
    replaced: "A newer packet has replaced this one. Ask for it.",
    hash: "SHA-256 of the file",
    reach: "Phone",
    private: "Whoever has this address can open the packet. Share it as you would share the paper.",
  },
  es: {
    kinds: {
      homeowner: "Cuaderno del propietario",
      crew: "Hoja de la cuadrilla",
      file: "Expediente",
      review: "Revisión de humedad",
    },
    made: "Hecho el",
    pages: "Páginas",
    until: "Esta página abre hasta el",
    open: "Abrir el cuaderno (PDF)",
    replaced: "Un cuaderno más nuevo ha reemplazado a este. Pídalo.",
    hash: "SHA-256 del archivo",
    reach: "Teléfono",
    private: "Quien tenga esta dirección puede abrir el cuaderno. Compártala como compartiría el papel.",
  },
} as const;

/** The private page of one packet. */
export function SharedPacket({ packet, href }: Props) {
  const words = WORDS[packet.language];
  const facts = [
    [words.made, packet.createdAt.slice(0, 10)],
    [words.pages, String(packet.pages)],
    [words.until, packet.expiresAt.slice(0, 10)],
    ...(packet.phone === "" ? [] : [[words.reach, packet.phone] as const]),
  ] as const;
  return (
    <main
      id="content"
      lang={packet.language}
      className="mx-auto grid min-h-dvh max-w-lg content-center gap-5 px-4 py-10"
    >
      <BrandStyle accent={packet.accentColor} />
      <header className="border-b-3 border-double border-rule-strong pb-3">
        <p className="text-muted">{packet.companyName}</p>
        <h1 className="text-2xl font-semibold">
          {words.kinds[packet.kind]} {packet.revision}
        </h1>
      </header>
      {packet.isReplaced ? <Notice kind="information" title={words.replaced} /> : null}
      <dl className="grid grid-cols-[auto_1fr] gap-x-6 gap-y-1">
        {facts.map(([label, text]) => (
          <div key={label} className="contents">
            <dt className="text-muted">{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <a href={href} className="button button-primary">
        {words.open}
      </a>
      <p className="text-sm text-muted">{words.private}</p>
      <p className="text-xs text-muted">
        {words.hash} <code className="break-all">{packet.sha256}</code>
      </p>
    </main>
  );
}
