import { createTransport, type SendMailOptions, type Transporter } from "nodemailer";
import { AppError } from "@/lib/errors";
import type { SentMail } from "./message";

/** One pool of connections per server address, made at first use. */
const transports = new Map<string, Transporter>();

/** Hands a mail to the server at an `smtp://` or `smtps://` address. */
export async function sendBySmtp(url: string, options: SendMailOptions): Promise<SentMail> {
  try {
    const info = await transportTo(url).sendMail(options);
    return { via: "smtp", messageId: info.messageId };
  } catch (cause) {
    throw new AppError("UNAVAILABLE", "The mail could not be handed to the mail server. Try again later.", {
      cause,
    });
  }
}

/** Closes idle connections, so that the process can end. */
export function closeSmtp(): void {
  for (const transport of transports.values()) transport.close();
  transports.clear();
}

function transportTo(url: string): Transporter {
  const known = transports.get(url);
  if (known) return known;
  const address = new URL(url);
  // Without these a silent server would hold a background job for ten minutes.
  address.searchParams.set("pool", "true");
  address.searchParams.set("connectionTimeout", "15000");
  address.searchParams.set("greetingTimeout", "15000");
  address.searchParams.set("socketTimeout", "60000");
  const made = createTransport(address.toString());
  transports.set(url, made);
  return made;
}
