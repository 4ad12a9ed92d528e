import { OWNER_KEY, SIGN_OUT_KEY } from "./owner";

const PATH = "/api/field/bundle";
const PLACE = "dewledgerFirstBundle";

/**
 * Stands in the page's head: a phone that holds nothing asks for its jobs while the script is still on its way, instead of
 * after it. One that holds something shows that, and asks with the headers that name whose it is.
 */
export const EARLY_BUNDLE_SCRIPT = `try{localStorage.getItem("${OWNER_KEY}")||localStorage.getItem("${SIGN_OUT_KEY}")||(window.${PLACE}=fetch("${PATH}",{cache:"no-store",redirect:"error"}),window.${PLACE}.catch(()=>{}))}catch{}`;

/** The network, which answers the first question for the jobs with what the page's head has asked for already. */
export function withEarlyBundle(ask: typeof fetch): typeof fetch {
  return (input, init) => {
    const page = globalThis as { [PLACE]?: Promise<Response> };
    const early = page[PLACE];
    const isFirst = input === PATH && new Headers(init?.headers).keys().next().done === true;
    if (early === undefined || !isFirst) return ask(input, init);
    // Once only: the next question is about what is new since.
    delete page[PLACE];
    return Promise.race([early, endOf(init?.signal ?? null)]);
  };
}

/** Fails when the asker gives up, as its own request would. */
function endOf(signal: AbortSignal | null): Promise<never> {
  return new Promise((_, fail) => {
    signal?.addEventListener("abort", () => fail(signal.reason), { once: true });
  });
}
