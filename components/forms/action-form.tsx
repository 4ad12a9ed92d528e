"use client";

import { type ComponentProps, startTransition } from "react";

export type ActionFormProps = Omit<ComponentProps<"form">, "action" | "onSubmit"> & {
  readonly action: (form: FormData) => void | Promise<void>;
};

/**
 * A form that keeps what was typed. React empties a form after its `action` has run, even when the answer
 * was an error; sending it by hand leaves every field as it is.
 */
export function ActionForm({ action, children, ...rest }: ActionFormProps) {
  return (
    <form
      noValidate
      {...rest}
      action={action}
      onSubmit={(event) => {
        event.preventDefault();
        const submitter = (event.nativeEvent as SubmitEvent).submitter;
        const form = new FormData(event.currentTarget, submitter);
        startTransition(() => action(form));
      }}
    >
      {children}
    </form>
  );
}
