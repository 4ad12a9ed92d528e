import type { NextAuthOptions } from "next-auth";
import Credentials from "next-auth/providers/credentials";
import { unscopedSignInUser } from "@/lib/db/unscoped/people";
import { env } from "@/lib/env";
import { clientAddress } from "./client-address";
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

/** Read lazily, because the secret comes from the environment of the running server. */
export function authOptions(): NextAuthOptions {
  return {
    secret: env().NEXTAUTH_SECRET,
    session: { strategy: "jwt", maxAge: SESSION_HOURS * 3600 },
    pages: { signIn: "/sign-in" },
    providers: [
      Credentials({
        credentials: { email: {}, password: {} },
        authorize: (given, request) =>
          signIn(given?.email ?? "", given?.password ?? "", addressOf(request?.headers)),
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

async function signIn(email: string, password: string, address: string) {
  const who = email.trim().toLowerCase();
  if (!(await takeSignInTry(who, address))) throw new Error("TOO_MANY_TRIES");
  const user = await unscopedSignInUser(who);
  if (!(await passwordFits(user?.passwordHash ?? null, password)) || !user) return null;
  await forgetSignInTry(who, address);
  return { id: `${user.id}:${user.sessionVersion}` };
}

function addressOf(headers: unknown): string {
  const all = (headers ?? {}) as Readonly<Record<string, string | undefined>>;
  return clientAddress(all["x-forwarded-for"]);
}
