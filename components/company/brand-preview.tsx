"use client";

import { useEffect, useRef, useState } from "react";
import { PaperPages } from "@/components/packets/paper-pages";

type Props = {
  /** The form whose fields are shown as they are typed. */
  readonly formId: string;
  /** Changes when another logo is in use. */
  readonly logoKey: string;
};

/** Typing rests this long before the page is made again. */
const REST_MS = 600;

/** The first and last page of a packet with the brand as it is being typed: the real file, made by the server. */
export function BrandPreview({ formId, logoKey }: Props) {
  const [pdf, setPdf] = useState<ArrayBuffer | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const asked = useRef(0);

  // biome-ignore lint/correctness/useExhaustiveDependencies: another logo is another page
  useEffect(() => {
    const form = document.getElementById(formId);
    if (!(form instanceof HTMLFormElement)) return;
    const leaving = new AbortController();
    let timer: ReturnType<typeof setTimeout> | undefined;
    const show = async () => {
      const turn = ++asked.current;
      const answer = await madeFrom(form, leaving.signal);
      // An answer that was overtaken by a newer question shows what is no longer typed.
      if (answer === null || turn !== asked.current) return;
      setProblem(answer.problem);
      if (answer.pdf !== null) setPdf(answer.pdf);
    };
    const wait = () => {
      clearTimeout(timer);
      timer = setTimeout(show, REST_MS);
    };
    void show();
    form.addEventListener("input", wait);
    return () => {
      clearTimeout(timer);
      leaving.abort();
      form.removeEventListener("input", wait);
    };
  }, [formId, logoKey]);

  return (
    <div className="grid gap-3">
      <p className="text-sm text-muted">
        As it would be printed now, with invented figures. Nothing is saved.
      </p>
      {problem === null ? null : (
        <p role="status" className="text-sm text-short">
          {problem}
        </p>
      )}
      {pdf === null ? null : <PaperPages pdf={pdf} label="Preview of a packet" firstAndLast />}
    </div>
  );
}

type Made = { readonly pdf: ArrayBuffer | null; readonly problem: string | null };

async function madeFrom(form: HTMLFormElement, signal: AbortSignal): Promise<Made | null> {
  try {
    const body = JSON.stringify(Object.fromEntries(new FormData(form)));
    const answer = await fetch("/api/brand/preview", { method: "POST", body, signal });
    if (answer.ok) return { pdf: await answer.arrayBuffer(), problem: null };
    const { message, fields } = await answer.json();
    return { pdf: null, problem: fields?.[0]?.message ?? message };
  } catch {
    return signal.aborted ? null : { pdf: null, problem: "The preview could not be made: no connection." };
  }
}
