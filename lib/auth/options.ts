import type { NextAuthOptions } from "next-auth";
import Credentials from "next-auth/providers/credentials";
import { unscopedSignInUser } from "@/lib/db/unscoped/people";
import { env } from "@/lib/env";
import { clientAddress } from "./client-address";
import { knownDevice } from "./known-device";
import { passwordFits } from "./password";
import { forgetSignInTry, takeSignInTry } from "./sign-in-limit";

const SESSION_HOURS = 24 * 14;

/** What the signed cookie carries. It grants nothing by itself: every request checks the database. */
declare module "next-auth/jwt" {
  interface JWT {
    userId?: string;
    sessionVersion?: number;
  }
}

/** What the sign-in page is told; the library would hand it the text of any error, which may say how this is built. */
const TOO_MANY = "TOO_MANY_TRIES";
const UNAVAILABLE = "UNAVAILABLE";

/**
 * Read lazily, because the secret comes from the environment of the running server.
 *
 * @param told.failed - Of what went wrong on our side.
 * @param told.signedIn - Whose password was right.
 */
export function authOptions(
  told: { readonly failed?: (error: unknown) => void; readonly signedIn?: (email: string) => void } = {},
): NextAuthOptions {
  return {
    secret: env().NEXTAUTH_SECRET,
    session: { strategy: "jwt", maxAge: SESSION_HOURS * 3600 },
    pages: { signIn: "/sign-in" },
    providers: [
      Credentials({
        credentials: { email: {}, password: {} },
        authorize: async (given, request) => {
          const who = textOf(given?.email).trim().toLowerCase();
          try {
            const user = await signIn(who, textOf(given?.password), request?.headers);
            if (user) told.signedIn?.(who);
            return user;
          } catch (error) {
            if (error instanceof Error && error.message === TOO_MANY) throw error;
            told.failed?.(error);
            throw new Error(UNAVAILABLE);
          }
        },
      }),
    ],
    callbacks: {
      jwt: ({ token, user }) => {
        if (user) {
          const [userId, version] = user.id.split(":");
          return { userId, sessionVersion: Number(version) };
        }
        return token;
      },
      // Nothing about the person leaves the server through the session endpoint.
      session: ({ session }) => ({ expires: session.expires }),
    },
  };
}

async function signIn(who: string, password: string, headers: unknown) {
  const sent = (headers ?? {}) as Readonly<Record<string, string | undefined>>;
  const address = clientAddress(sent["x-forwarded-for"]);
  const device = knownDevice(who, sent.cookie);
  if (!(await takeSignInTry(who, address, device))) throw new Error(TOO_MANY);
  // No database column holds a NUL, so nobody has such an address.
  if (who.includes("\0")) return null;
  const user = await unscopedSignInUser(who);
  if (!(await passwordFits(user?.passwordHash ?? null, password)) || !user) return null;
  await forgetSignInTry(who, address, device);
  return { id: `${user.id}:${user.sessionVersion}` };
}

/** A body of JSON may hold anything where a form holds text. */
const textOf = (given: unknown): string => (typeof given === "string" ? given : "");
