import type { TypedValues } from "./typed-values";

/**
 * Writes values into the fields of a form whose fields keep their own text. Each field that changes tells of it
 * as if it had been typed, so that its own message follows.
 */
export function fillForm(form: HTMLFormElement, values: TypedValues): void {
  for (const [name, value] of Object.entries(values)) {
    for (const element of form.querySelectorAll(`[name="${CSS.escape(name)}"]`)) write(element, value);
  }
}

function write(element: Element, value: TypedValues[string]): void {
  const text = value === null ? "" : typeof value === "boolean" ? (value ? "yes" : "no") : String(value);
  if (element instanceof HTMLInputElement && element.type === "radio") {
    element.checked = element.value === text;
    return;
  }
  const isText = element instanceof HTMLInputElement || element instanceof HTMLTextAreaElement;
  if (!isText && !(element instanceof HTMLSelectElement)) return;
  if (element.value === text) return;
  // React hears of a change only when the value was set past its own setter on the element.
  Object.getOwnPropertyDescriptor(Object.getPrototypeOf(element), "value")?.set?.call(element, text);
  element.dispatchEvent(new Event(isText ? "input" : "change", { bubbles: true }));
}
