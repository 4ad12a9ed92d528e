import NextAuth from "next-auth";
import { authOptions } from "@/lib/auth/options";

// Made at each request, because the settings exist only in the running server, not in the build.
function handler(request: Request, context: unknown) {
  return NextAuth(authOptions())(request, context);
}

export { handler as GET, handler as POST };
