import { cache } from "react";
import { jobView } from "@/lib/services/job-view";

/** A job's view, computed once a request however many parts of the page ask for it. */
export const jobOfRequest = cache(jobView);
