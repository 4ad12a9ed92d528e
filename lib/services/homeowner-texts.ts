import type { PacketLanguage } from "@/lib/domain/packets";
import type { HomeownerTexts } from "./homeowner-text-types";
import { ENGLISH } from "./homeowner-texts-en";
import { SPANISH } from "./homeowner-texts-es";

/** The homeowner's packet in each language it is written in. */
export const HOMEOWNER_TEXTS: Readonly<Record<PacketLanguage, HomeownerTexts>> = { en: ENGLISH, es: SPANISH };
