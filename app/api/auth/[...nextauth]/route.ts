import { NextRequest } from "next/server";
import NextAuth from "next-auth";
import { deviceCookie } from "@/lib/auth/known-device";
import { authOptions } from "@/lib/auth/options";
import { answered } from "@/lib/server/answered";
import { failureFacts } from "@/lib/server/failure";
import { readBodyUpTo } from "@/lib/server/limited-body";
import { log } from "@/lib/server/request-log";

/** An address and a password: the library itself would read a body of any size, of anybody. */
const MOST_BYTES = 16 * 1024;
const TOO_LARGE = { field: "password", message: "This is too much for an address and a password." };

function handler(request: NextRequest, context: unknown): Promise<Response> {
  return answered("sign-in", request, async () => {
    const { method, headers, url } = request;
    const body =
      method === "POST" ? Buffer.from(await readBodyUpTo(request, MOST_BYTES, TOO_LARGE)) : undefined;
    // Made at each request, because the settings exist only in the running server, not in the build.
    let known: string | null = null;
    const options = authOptions({
      failed: (error) => log().error({ route: "sign-in", error: failureFacts(error) }),
      signedIn: (email) => {
        known = email;
      },
    });
    const answer: Response = await NextAuth(options)(
      new NextRequest(url, { method, headers, body }),
      context,
    );
    if (known !== null) answer.headers.append("set-cookie", deviceCookie(known));
    return answer;
  });
}

export { handler as GET, handler as POST };
