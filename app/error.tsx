"use client";

import { Button } from "@/components/ui/plain-button";

type ErrorPageProps = { readonly error: Error & { readonly digest?: string }; readonly reset: () => void };

/** Shows an id that leads to the entry in the server's log, and nothing of the error itself. */
export default function ErrorPage({ error, reset }: ErrorPageProps) {
  return (
    <main id="content" className="mx-auto grid max-w-lg gap-3 px-5 py-20">
      <h1 className="text-2xl">This page could not be shown</h1>
      <p className="text-muted">
        What was saved before is still there. Try again; if it keeps happening, pass on the error id.
      </p>
      <p>
        Error id: <strong>{error.digest ?? "none, it happened in this browser"}</strong>
      </p>
      <div className="flex flex-wrap gap-2">
        <Button variant="primary" onClick={reset}>
          Try again
        </Button>
        {/* A plain link: the page it leads to is to be loaded anew, and every page carries this one along. */}
        <a href="/" className="button button-secondary">
          Go to the start page
        </a>
      </div>
    </main>
  );
}
