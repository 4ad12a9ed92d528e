import { type PointerEvent, useRef, useState } from "react";
import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import { PhotoCard } from "./photo-card";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

const CAPTION = "Customer’s signature";

/** A place to sign with a finger. It is kept and sent like a photo. Signing by name is in the walk-through. */
export function SignaturePaper({ work }: { readonly work: Work }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [isDrawn, setIsDrawn] = useState(false);
  const kept = work.state.photos.find((one) => one.jobId === work.job.id && one.caption.startsWith(CAPTION));
  if (kept) {
    return (
      <Card title={CAPTION}>
        <PhotoCard photo={kept} />
      </Card>
    );
  }
  const draw = (event: PointerEvent<HTMLCanvasElement>, begins: boolean) => {
    const paper = event.currentTarget.getContext("2d");
    if (!paper || (!begins && event.buttons === 0)) return;
    const box = event.currentTarget.getBoundingClientRect();
    const x = ((event.clientX - box.left) * event.currentTarget.width) / box.width;
    const y = ((event.clientY - box.top) * event.currentTarget.height) / box.height;
    if (begins) {
      event.currentTarget.setPointerCapture(event.pointerId);
      if (!isDrawn) {
        paper.fillStyle = "#ffffff";
        paper.fillRect(0, 0, event.currentTarget.width, event.currentTarget.height);
      }
      paper.beginPath();
      paper.moveTo(x, y);
      setIsDrawn(true);
      return;
    }
    paper.strokeStyle = "#000000";
    paper.lineWidth = 4;
    paper.lineCap = "round";
    paper.lineTo(x, y);
    paper.stroke();
  };
  const clear = () => {
    const sheet = canvas.current;
    sheet?.getContext("2d")?.clearRect(0, 0, sheet.width, sheet.height);
    setIsDrawn(false);
  };
  const keep = async () => {
    const bytes = await new Promise<Blob | null>((done) => canvas.current?.toBlob(done, "image/png"));
    if (!bytes) return;
    const { customerShownName } = work.values;
    const signature = {
      jobId: work.job.id,
      field: "walkThroughDone",
      caption: typeof customerShownName === "string" ? `${CAPTION}: ${customerShownName}` : CAPTION,
      takenAt: new Date().toISOString(),
      latitude: null,
      longitude: null,
      bytes,
      type: bytes.type,
    };
    await phone().keepPhoto(signature, null);
    await phone().send();
  };
  return (
    <Card title={CAPTION}>
      <canvas
        ref={canvas}
        width={1000}
        height={360}
        role="img"
        aria-label="Paper for the customer’s signature. Without a finger: the name in the walk-through counts."
        className="w-full touch-none border border-rule-strong bg-white"
        onPointerDown={(event) => draw(event, true)}
        onPointerMove={(event) => draw(event, false)}
      />
      <div className="mt-2 flex gap-2 [&>*]:flex-1">
        <Button onClick={clear}>Clear</Button>
        <Button variant="primary" disabled={!isDrawn} onClick={() => void keep()}>
          Keep
        </Button>
      </div>
    </Card>
  );
}
