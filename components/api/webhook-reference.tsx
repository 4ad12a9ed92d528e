import { WEBHOOK_EVENT_KEYS, WEBHOOK_EVENTS } from "@/lib/domain/webhooks";
import { eventReference } from "@/lib/schemas/api/reference";
import { Code } from "./code";
import { ReferenceRows } from "./reference-rows";

const CHECK = `const [, time, digest] = /^signed-at=(\\d+); sha256=([0-9a-f]{64})$/.exec(request.headers["dewledger-signature"]) ?? [];
const own = createHmac("sha256", SECRET).update(\`\${time}.\${body}\`).digest();
const fits = digest !== undefined && timingSafeEqual(own, Buffer.from(digest, "hex"))
  && Math.abs(Date.now() / 1000 - Number(time)) < 300;`;

/** What a listening program is sent, and how it knows that it is from here. */
export function WebhookReference() {
  return (
    <div className="grid grid-cols-[minmax(0,1fr)] gap-4">
      <ul className="grid list-disc grid-cols-[minmax(0,1fr)] gap-1 pl-5">
        <li>
          An owner adds an https address under Company → Webhooks and picks events. Each is a POST of JSON;
          answer any status from 200 to 299 within 10 seconds, then do the work.
        </li>
        <li>
          Anything else is tried again, eight times in about half an hour. After three deliveries in a row
          were given up the webhook is switched off and the owner mailed. Redirects are not followed.
        </li>
        <li>
          The same delivery may come twice, and in another order than things happened: its <code>id</code>{" "}
          stays the same.
        </li>
        <li>
          Check the signature over the body’s very bytes before you read them, and refuse a time that is
          minutes away. In Node:
          <Code>{CHECK}</Code>
        </li>
      </ul>
      {WEBHOOK_EVENT_KEYS.map((event) => (
        <details key={event}>
          <summary className="cursor-pointer">
            <code className="font-semibold">{event}</code> {WEBHOOK_EVENTS[event]}
          </summary>
          <div className="mt-2">
            <ReferenceRows title="" rows={eventReference(event)} what={event} always />
          </div>
        </details>
      ))}
      <p>
        <code>test</code> is sent when an owner presses “Send a test”; its <code>data</code> is empty.
      </p>
    </div>
  );
}
