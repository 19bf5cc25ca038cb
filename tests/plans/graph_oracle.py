"""A second opinion on a plan, from its JSON alone: the fabric as a graph of loops.

Nothing of `plans` is used, nor its picture of one needle with two tips. Here each half of each sock is a list of
loops as they lie from right to left, right side facing, and a finger marks where its yarn hangs between two of
them. Every loop becomes a node; an edge leads from a loop to the loop drawn through it, or passed over it.
"""

from dataclasses import dataclass, field

import networkx as nx

ALGEBRA = {
    "k": (1, 1), "p": (1, 1), "ktbl": (1, 1), "ptbl": (1, 1), "sl_wyib": (1, 1), "sl_wyif": (1, 1), "m1l": (0, 1),
    "m1r": (0, 1), "k2tog": (2, 1), "ssk": (2, 1), "p2tog": (2, 1), "ssp": (2, 1), "co": (0, 1),
    "ds": (1, 1), "kfb": (1, 2), "lifted_l": (0, 1), "lifted_r": (0, 1), "yo": (0, 1),
}  # fmt: skip
SETS_UP = {"co", "co_waste", "free", "pick_up"}
OTHER_HALF = {"front": "back", "back": "front"}


class Unknittable(Exception):
    """The row cannot be knitted; says which and why."""


@dataclass
class Half:
    """Loops from right to left; those before the finger lie right of where the yarn hangs."""

    loops: list[int] = field(default_factory=list)
    finger: int = 0


class Oracle:
    """Knits rows of JSON into a graph."""

    def __init__(self, plan):
        self.plan = plan
        extra = plan.get("extra_ops", {})
        self.algebra = ALGEBRA | {name: (does["takes"], does["makes"]) for name, does in extra.items()}
        self.bind_offs = {"bo"} | {name for name in extra if name.endswith("_bo")}
        self.graph = nx.DiGraph()
        self.halves = {(sock, half): Half() for sock in (1, 2) for half in ("front", "back")}
        self.yarn_half = {1: None, 2: None}
        self.waiting = {1: None, 2: None}
        self.fastened = set()
        self.grafted = set()
        self.gathered = set()
        self.kept = {sock: {"front": [], "back": []} for sock in (1, 2)}
        used = {group["op"] for row in plan["rows"] for group in row["ops"]}
        self.heel_last = bool(used & {"waste", "thread"})
        self.counts = []

    def knit(self):
        """All rows, then the whole fabric."""
        for row in self.plan["rows"]:
            self._row(row)
            count = len(self.halves[row["sock"], row["half"]].loops)
            waits = self.waiting[row["sock"]]
            if waits is not None and self.graph.nodes[waits]["half"] == row["half"]:
                count += 1
            self.counts.append(count)
            if count != row["stitches_after"]:
                raise Unknittable(row["index"], f"{count} loops, not {row['stitches_after']}")
        return self

    def _row(self, row):
        lies = self.halves[row["sock"], row["half"]]
        rightward = row["facing"] == "WS"
        before = len(lies.loops)
        if not {group["op"] for group in row["ops"]} <= SETS_UP:
            self._place_finger(row, lies)
        hung = self.yarn_half[row["sock"]]
        for group in row["ops"]:
            for _ in range(group["times"]):
                self._work(row, lies, group, rightward)
        frees = {group["op"] for group in row["ops"]} <= SETS_UP and hung is not None and row["half"] == "front"
        self.yarn_half[row["sock"]] = hung if frees and row["stage"] == "toe" else row["half"]
        heel = row["stage"].startswith("heel") and row["half"] == "back" and not self.heel_last
        heel = heel or (row["stage"] == "toe" and bool(self.kept[row["sock"]]["front"]))
        at_end = lies.finger == (0 if rightward else len(lies.loops))
        if before and not heel and not at_end:
            raise Unknittable(row["index"], "loops stay unworked")

    def _place_finger(self, row, lies):
        """Coming from the other half the yarn starts at the right edge; else it goes on where it hangs."""
        came = self.yarn_half[row["sock"]]
        if came != row["half"]:
            lies.finger = 0
            if row["facing"] == "WS":
                raise Unknittable(row["index"], "the yarn hangs at the other edge")

    def _ahead(self, row, lies, rightward, number):
        first = lies.finger - number if rightward else lies.finger
        if first < 0 or first + number > len(lies.loops):
            raise Unknittable(row["index"], "no loop is there")
        return slice(first, first + number)

    def _work(self, row, lies, group, rightward):
        op = group["op"]
        if op == "wrap_turn":
            wrapped = lies.loops[self._ahead(row, lies, rightward, 1)][0]
            self.graph.nodes[wrapped]["wraps"] += 1
        elif op == "twin":
            shadowed = lies.loops[self._ahead(row, lies, rightward, 1)][0]
            self.graph.nodes[shadowed]["double"] = True
        elif op == "co_waste":
            self._cast_on_over_waste(row, lies)
        elif op in ("waste", "thread"):
            self._keep(row, lies, group)
        elif op == "free":
            self._free(row, lies)
        elif op in ("graft", "three_needle"):
            self._graft(row, lies)
        elif op == "graft_rib":
            pair = self._ahead(row, lies, rightward, 2)
            self._join(row, lies.loops[pair])
            del lies.loops[pair]
        elif op in self.bind_offs:
            self._bind_off(row, lies, group)
        elif op == "fasten":
            self._fasten(row)
        else:
            self._draw_through(row, lies, group, rightward)

    def _cast_on_over_waste(self, row, lies):
        """Between its foot and that of the loop before lies a loop for the other half, kept by the waste yarn."""
        other = {**row, "half": OTHER_HALF[row["half"]]}
        if lies.loops:
            self.kept[row["sock"]][other["half"]].append(self._loop(other))
        lies.loops.append(self._loop(row))

    def _keep(self, row, lies, group):
        """The first of a run of kept loops takes the whole run: each further one of the group is in it already."""
        kept = self.kept[row["sock"]]
        if kept["front"]:
            return
        run = self._ahead(row, lies, False, group["times"])
        kept["front"] = lies.loops[run]
        kept["back"] = [self._loop(row) for _ in range(group["times"] - 1)]
        if group["op"] == "waste":
            lies.loops[run] = [self._loop(row) for _ in range(group["times"])]

    def _free(self, row, lies):
        """A loop that was kept hangs on a needle again: what was drawn through it is unpicked."""
        kept = self.kept[row["sock"]][row["half"]]
        if not kept:
            raise Unknittable(row["index"], "no loop was kept")
        loop = kept.pop(0)
        self.graph.remove_edges_from(list(self.graph.out_edges(loop)))
        self.graph.nodes[loop]["worked"] = 0
        lies.loops.insert(lies.finger, loop)
        lies.finger += 1

    def _graft(self, row, lies):
        """The rightmost loop of the front and the leftmost of the back, which meet where the round begins."""
        other = self.halves[row["sock"], OTHER_HALF[row["half"]]]
        if not lies.loops or not other.loops:
            raise Unknittable(row["index"], "there is nothing to graft")
        self._join(row, [lies.loops.pop(0), other.loops.pop()])

    def _join(self, row, loops):
        self._check_marks(row, {}, loops)
        seam = self._loop(row)
        self.grafted.add(seam)
        for loop in loops:
            self._worked(loop)
            self.graph.add_edge(loop, seam, over=True)

    def _worked(self, loop):
        self.graph.nodes[loop]["worked"] += 1

    def _draw_through(self, row, lies, group, rightward):
        takes, makes = self.algebra[group["op"]]
        place = self._ahead(row, lies, rightward, takes)
        taken = lies.loops[place]
        self._check_marks(row, group, taken)
        made = [self._loop(row, double=group["op"] == "ds") for _ in range(makes)]
        for old in taken:
            self._worked(old)
            self.gathered |= {old} if group["op"] == "gather" else set()
            for new in made:
                self.graph.add_edge(old, new)
        lies.loops[place] = made[::-1] if rightward else made
        lies.finger = place.start if rightward else place.start + makes

    def _check_marks(self, row, group, taken):
        marked = [self.graph.nodes[loop] for loop in taken]
        if any(loop["wraps"] for loop in marked) != group.get("wrap", False):
            raise Unknittable(row["index"], "a wrap is wrong")
        if any(loop["double"] for loop in marked) != group.get("double", False):
            raise Unknittable(row["index"], "a double stitch is wrong")

    def _bind_off(self, row, lies, group):
        """The loop made last, or the one that waited, is passed over the next."""
        sock = row["sock"]
        taken = lies.loops[self._ahead(row, lies, False, 1)][0]
        over = self.waiting[sock]
        if over is None:
            over = lies.loops.pop(lies.finger - 1) if lies.finger else None
            lies.finger -= 1
        if over is None:
            raise Unknittable(row["index"], "nothing waits to be passed over")
        self._check_marks(row, group, [taken])
        lies.loops.pop(lies.finger)
        new = self._loop(row)
        self._worked(taken)
        self._worked(over)
        self.graph.add_edge(taken, new)
        self.graph.add_edge(over, new, over=True)
        self.waiting[sock] = new

    def _fasten(self, row):
        last = self.waiting[row["sock"]]
        if last is None:
            raise Unknittable(row["index"], "no loop to fasten")
        self.fastened.add(last)
        self.waiting[row["sock"]] = None

    def _loop(self, row, *, double=False):
        number = self.graph.number_of_nodes()
        stands = {"sock": row["sock"], "half": row["half"], "row": row["index"], "stage": row["stage"]}
        self.graph.add_node(number, wraps=0, double=double, worked=0, **stands)
        return number

    # --- the whole fabric ---

    def worked_not_once(self):
        """Loops that no other was drawn through or over, or more than once, but for those fastened or grafted."""
        ends = self.fastened | self.grafted
        return [loop for loop, data in self.graph.nodes(data=True) if data["worked"] != (0 if loop in ends else 1)]

    def columns(self, sock):
        """Columns of a sock that reach the bind-off; those a decrease joined count as one."""
        fabric = self.graph.edge_subgraph(
            (one, other) for one, other, data in self.graph.edges(data=True) if not data.get("over")
        )
        own = [loop for loop in fabric if self.graph.nodes[loop]["sock"] == sock]
        return nx.number_weakly_connected_components(fabric.subgraph(own))

    def is_one_way(self):
        """No loop is drawn through a later one."""
        return nx.is_directed_acyclic_graph(self.graph)
