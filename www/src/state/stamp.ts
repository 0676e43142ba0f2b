/** A word that no other visit or tab makes. */
export function freshStamp(): string {
	return `${Date.now().toString(36)}-${Math.random().toString(36).slice(2)}`;
}
