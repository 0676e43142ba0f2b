import type { Attachment } from 'svelte/attachments';

const GAP = 6;

/** Puts a popover under the element that opened it, or above where there is more room, and inside the window. */
export function beside(anchor: () => HTMLElement | undefined): Attachment<HTMLElement> {
	return (popover) => {
		const place = (): void => {
			const at = anchor()?.getBoundingClientRect();
			if (at === undefined || !popover.matches(':popover-open')) return;
			const { offsetWidth: width, offsetHeight: height } = popover;
			const left = Math.min(at.left, document.documentElement.clientWidth - width - GAP);
			const below = at.bottom + GAP;
			const fitsBelow = below + height <= innerHeight || at.top < innerHeight - at.bottom;
			popover.style.left = `${Math.max(GAP, left)}px`;
			popover.style.top = `${Math.max(GAP, fitsBelow ? below : at.top - GAP - height)}px`;
		};
		const follow = new ResizeObserver(place);
		const toggled = (): void => {
			if (popover.matches(':popover-open')) {
				follow.observe(popover);
				addEventListener('scroll', place, { capture: true, passive: true });
			} else {
				follow.disconnect();
				removeEventListener('scroll', place, { capture: true });
			}
		};
		popover.addEventListener('toggle', toggled);
		return () => {
			follow.disconnect();
			removeEventListener('scroll', place, { capture: true });
		};
	};
}
