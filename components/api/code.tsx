/** Something to be copied into a shell or a program. */
export function Code({ children }: { readonly children: string }) {
  return (
    <pre
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
      tabIndex={0}
      className="mt-2 overflow-x-auto border border-rule bg-sunk p-3 font-mono text-sm"
    >
      {children}
    </pre>
  );
}
