import { useState } from "react";
import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import { keepableText, MOST_ANSWER } from "@/lib/domain/field-range";
import { SendMark } from "./send-mark";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

/** What the office asks about the job, or beside the readings it is about, with a place for the answer. */
export function Questions({ work, fields }: { readonly work: Work; readonly fields?: readonly string[] }) {
  const { job, state } = work;
  const open = job.questions.filter(
    (one) => one.answer === null && (fields === undefined || fields.includes(one.fieldPath ?? "")),
  );
  if (open.length === 0) return null;
  return (
    <Card title="The office asks">
      <ul className="grid gap-4">
        {open.map((question) => {
          const answer = state.letters.find((one) => one.kind === "answer" && one.questionId === question.id);
          return (
            <li key={question.id}>
              <p className="font-semibold">{question.text}</p>
              <p className="text-xs text-muted">
                {question.askedByName}, {new Date(question.askedAt).toLocaleString()}
              </p>
              {answer ? (
                <div className="mt-1 flex flex-wrap justify-between gap-2">
                  <span>{answer.text}</span>
                  <SendMark
                    at={
                      answer.state.at === "office"
                        ? "sent"
                        : answer.state.at === "refused"
                          ? "needs you"
                          : "phone"
                    }
                  />
                  {answer.state.at === "refused" ? (
                    <p className="text-short">{answer.state.message}</p>
                  ) : null}
                </div>
              ) : (
                <AnswerForm work={work} questionId={question.id} />
              )}
            </li>
          );
        })}
      </ul>
    </Card>
  );
}

function AnswerForm({ work, questionId }: { readonly work: Work; readonly questionId: string }) {
  const [text, setText] = useState("");
  const id = `answer-${questionId}`;
  return (
    <form
      className="mt-1 grid gap-2"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== "")
          void phone().write({ jobId: work.job.id, kind: "answer", questionId, text: text.trim() });
      }}
    >
      <label htmlFor={id} className="text-sm">
        Your answer
      </label>
      <textarea
        id={id}
        className="control"
        rows={2}
        maxLength={MOST_ANSWER}
        value={text}
        onChange={(event) => setText(keepableText(event.target.value))}
      />
      <Button type="submit">Answer</Button>
    </form>
  );
}
