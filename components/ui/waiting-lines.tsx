/** A place whose content is on its way: blank ruled lines and a word, nothing that spins. */
export function WaitingLines({ label, lines = 6 }: { readonly label: string; readonly lines?: number }) {
  return (
    <div
      role="status"
      aria-busy="true"
      className="blank-lines border border-rule bg-sheet px-4 py-1.5 text-sm text-muted"
      style={{ minHeight: `${lines * 2.25}rem` }}
    >
      {label}
    </div>
  );
}
