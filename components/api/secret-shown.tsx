"use client";

import { useState } from "react";
import { Button } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";

type Props = { readonly title: string; readonly secret: string; readonly children: string };

/** A secret that is shown now and never again. */
export function SecretShown({ title, secret, children }: Props) {
  const [copied, setCopied] = useState<"no" | "yes" | "refused">("no");
  const copy = () =>
    navigator.clipboard.writeText(secret).then(
      () => setCopied("yes"),
      () => setCopied("refused"),
    );
  return (
    <Notice kind="done" title={title}>
      <p>{children}</p>
      <input
        readOnly
        value={secret}
        aria-label="Secret"
        autoComplete="off"
        className="control mt-2 font-mono text-sm"
        onFocus={(event) => event.currentTarget.select()}
      />
      <div className="mt-2 flex flex-wrap items-center gap-3">
        <Button onClick={copy}>Copy</Button>
        <span role="status" className="text-muted">
          {copied === "yes" ? "Copied." : null}
          {copied === "refused" ? "The browser does not let it be copied: select it and copy by hand." : null}
        </span>
      </div>
    </Notice>
  );
}
