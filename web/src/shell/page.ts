/** What a page is: its words beside the one scene, what it does with the scene while it is shown, and how it follows
 * an address that changed within it.
 */

import type { Chamber } from "../scene/chamber";
import type { DirectionSphere } from "../scene/sphere";
import type { Stage } from "../scene/stage";

export type View = { stage: Stage; chamber: Chamber; sphere: DirectionSphere };
export type Page = { title: string; element: HTMLElement; leave: () => void; redraw?: () => void; follow?: () => void };
