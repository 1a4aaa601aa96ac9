/** A choice among roles in plain words. `not known` stands there until one is chosen. */
export function RolePick<R extends string>({
  label,
  role,
  names,
  onRole,
}: {
  readonly label: string;
  readonly role: R | undefined;
  readonly names: Readonly<Record<R, string>>;
  readonly onRole: (role: R) => void;
}) {
  return (
    <label className="field">
      <span className="label">{label}</span>
      <select value={role ?? ''} onChange={(e) => onRole(e.target.value as R)}>
        <option value="" disabled>
          not known
        </option>
        {(Object.entries(names) as [R, string][]).map(([id, say]) => (
          <option key={id} value={id}>
            {say}
          </option>
        ))}
      </select>
    </label>
  );
}
