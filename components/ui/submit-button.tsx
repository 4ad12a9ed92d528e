"use client";

import { useFormStatus } from "react-dom";
import { Button, type ButtonProps } from "./button";

/** Sends the form it stands in. Pass `busy` from `useActionState` inside an `ActionForm`. */
export function SubmitButton({ variant = "primary", busy, busyText = "Saving…", ...rest }: ButtonProps) {
  const { pending } = useFormStatus();
  return <Button {...rest} type="submit" variant={variant} busy={busy ?? pending} busyText={busyText} />;
}
