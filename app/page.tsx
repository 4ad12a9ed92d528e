import { redirect } from "next/navigation";
import { pageScope } from "@/lib/server/page";

/** Everyone starts where their work is: a tech with today's jobs, the others with the table of jobs. */
export default async function HomePage() {
  const scope = await pageScope("job.read");
  redirect(scope.role === "tech" ? "/today" : "/jobs");
}
