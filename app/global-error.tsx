"use client";

import ErrorPage from "./error";
import "./globals.css";

type GlobalErrorProps = { readonly error: Error & { readonly digest?: string }; readonly reset: () => void };

/** Stands in for the whole document when the outermost layout fails. */
export default function GlobalError(props: GlobalErrorProps) {
  return (
    <html lang="en">
      <head>
        <title>Dewledger</title>
      </head>
      <body>
        <ErrorPage {...props} />
      </body>
    </html>
  );
}
