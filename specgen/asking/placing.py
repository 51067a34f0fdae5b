"""Places offers in the files of a project, in memory, and reads the whole anew before anything is written."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path as FilePath

from specgen.asking.offers import Conflict, Offer, quote_entry
from specgen.asking.question_offers import Signer
from specgen.editing.add_values import add_values
from specgen.editing.edit import Addition
from specgen.model.field import Path, Schema, dotted_path
from specgen.model.problem import Problem, Refused
from specgen.reading.answers import ANSWERS, write_entry
from specgen.reading.file_text import read_content
from specgen.reading.positions import MOST_PROBLEMS
from specgen.reading.project import MISSING, survey_project
from specgen.reading.side_files import ATTACHMENTS, BESIDE, SIDE_FILES, find_mixed, home_of

_LINE = re.compile(r"\bline \d+")
_AT_LINE, _ROW = re.compile(r"(\S+) in line \d+"), re.compile(r"\b[A-Z]+(\d+)(?: |$)")


@dataclass
class Placed:
    """The files as they were and as they are to be, what was placed in them, and what cannot be."""

    before: dict[FilePath, bytes] = field(default_factory=dict)
    after: dict[FilePath, bytes] = field(default_factory=dict)
    taken: list[Offer] = field(default_factory=list)
    conflicts: list[Conflict] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)


class Placer:
    """Places offers in the files of one project; `signers` are who answered, by the number of the workbook.

    `edited` are contents of its files that are to be written first.
    """

    def __init__(self, file: FilePath, schema: Schema, edited: Mapping[FilePath, bytes] | None = None) -> None:
        self.file, self.schema, self.edited = file, schema, edited or {}
        self.project, problems = survey_project(file, schema, self._list_unwritten({}))
        self._standing: dict[Path, str] = {}
        self._mixed = find_mixed("firm", schema)
        # What is wrong already is told by a check; it is not the fault of an answer.
        self._known = set(map(_name_problem, problems))

    def place(
        self, offers: Iterable[Offer], signers: Sequence[tuple[Signer | None, str]] = (), whole: bool = False
    ) -> Placed:
        """The files with the offers in them, save those with which the project would be refused.

        `whole` leaves none of them where there is one such.
        """
        left, told = list(offers), Placed()
        while True:
            placed, held = self._edit(left, signers)
            out = {conflict.path for conflict in held}
            told.conflicts += held
            for problem in [] if held else self._find_new(placed.after):
                blamed = _blame(left, problem) or self._search(left, signers)
                told.problems.append(_tell(problem, blamed[0], left))
                out |= {offer.path for offer in blamed}
            if not out:
                placed.conflicts, placed.problems, placed.taken = told.conflicts, told.problems, left
                return placed
            if whole:
                return told
            left = [offer for offer in left if offer.path not in out]

    def _edit(self, offers: list[Offer], signers: Sequence[tuple[Signer | None, str]]) -> tuple[Placed, list[Conflict]]:
        """The files with all of these in them, and what stands there already in words that cannot be read."""
        by_file: dict[FilePath, list[Addition]] = {}
        for offer in offers:
            home = self._find_home(offer.path)
            by_file.setdefault(home, []).append(Addition(offer.path, offer.text, offer.remark))
        if offers and signers:
            by_file.setdefault(self.file, []).extend(self._list_records(offers, signers))
        placed, held = Placed(), list[Conflict]()
        for file, additions in by_file.items():
            before = self.edited.get(file) or read_content(file, file.name)
            edit = add_values(before, additions, self.schema, file.name)
            placed.before[file], placed.after[file] = before, edit.source
            placed.remarks += edit.remarks
            for one in edit.conflicts:
                of = tuple(offer for offer in offers if offer.path == one.path)
                held.append(Conflict(one.path, f"{file.name}:{one.line}", one.given or one.reason, "", of))
        return placed, held

    def _list_records(self, offers: list[Offer], signers: Sequence[tuple[Signer | None, str]]) -> Iterator[Addition]:
        """The entries of `answers` that tell who gave these values, and when."""
        taken = {*self.project.members.get((ANSWERS,), ())}
        number = 0
        for sheet, (signer, name) in enumerate(signers):
            fields = [write_entry(offer.path, offer.text) for offer in offers if offer.sheet == sheet]
            if not fields or signer is None:
                continue
            number = next(n for n in range(number + 1, number + len(taken) + 2) if f"Q{n}" not in taken)
            values = {"party": signer.party, "by": signer.by, "on": signer.on, "sheet": name}
            values["fields"] = f"[{', '.join(map(quote_entry, fields))}]"
            yield from (Addition((ANSWERS, f"Q{number}", key), text) for key, text in values.items() if text)

    def _find_home(self, path: Path) -> FilePath:
        """The file that a value belongs in: the side file where it is at home, or where what it belongs to stands."""
        home, stands = home_of(path, self.schema), self._find_standing(path)
        named = {side: str(name) for side in SIDE_FILES if (name := self.project.values.get((side,))) is not None}
        sides = {name: side for side, name in named.items()}
        name = named.get(home, "")
        if home == "firm" and stands == self.file.name and path[0] not in self._mixed:
            name = ""  # the project file has the section, which no other may have too
        elif not name and stands in sides and path[0] in BESIDE[sides[stands]]:
            name = stands
        return self.file.resolve().parent / name if name else self.file

    def _find_standing(self, path: Path) -> str:
        """The name of the file that gives a section; of papers, which all files may have, of the paper."""
        if not self._standing:
            for given in (*self.project.values, *self.project.members):
                for depth in (1, 2):
                    self._standing.setdefault(given[:depth], self.project.place(given).file)
        return self._standing.get(path[:2] if path[0] == ATTACHMENTS else path[:1], "")

    def _list_unwritten(self, after: Mapping[FilePath, bytes]) -> dict[FilePath, bytes]:
        return {file.resolve(): text for file, text in (*self.edited.items(), *after.items())}

    def _search(self, offers: list[Offer], signers: Sequence[tuple[Signer | None, str]]) -> list[Offer]:
        """The fewest offers with which the project would be refused, found by halves."""
        while len(offers) > 1:
            half = len(offers) // 2
            parts = (offers[:half], offers[half:])
            faulty = next((part for part in parts if self._find_new(self._edit(part, signers)[0].after)), None)
            if faulty is None:
                break
            offers = faulty
        return offers

    def _find_new(self, after: dict[FilePath, bytes]) -> list[Problem]:
        """The problems that the project has with these contents and had not before."""
        if not after:
            return []
        try:
            _, problems = survey_project(self.file, self.schema, self._list_unwritten(after))
        except Refused as refused:
            problems = list(refused.problems)
        # What is still missing is no fault of what was given.
        new = [one for one in problems if one.message != MISSING and _name_problem(one) not in self._known]
        return new[:MOST_PROBLEMS]


def _tell(problem: Problem, offer: Offer, offers: list[Offer]) -> Problem:
    """A problem of the project with an offer, at its cell; another one is named by its row, and not by its line."""

    def find_row(found: re.Match[str]) -> str:
        mark, beside = found[1], offer.path[:-2]
        rows = (one.place for one in offers if one.path[:-1] == (*beside, mark))
        row = _ROW.search(next(rows, ""))
        return f"{mark} in row {row[1]}" if row else mark

    message = _AT_LINE.sub(find_row, problem.message)
    return Problem(message, problem.hint, problem.path or dotted_path(offer.path), offer.place)


def _name_problem(problem: Problem) -> tuple[str, str]:
    """A problem by what it says, wherever it stands: lines move."""
    return problem.path, _LINE.sub("line", problem.message)


def _blame(offers: list[Offer], problem: Problem) -> list[Offer]:
    """The offers that a problem is about: at its path, else beside it; none where its path does not tell."""
    at = problem.path.partition(":")[0]  # behind which the name of a side file may stand
    named = [(f"{dotted_path(one.path)}.", one) for one in offers]
    exact = [one for name, one in named if f"{at}.".startswith(name)]
    below = [one for name, one in named if name.startswith(f"{at}.")] if at else []
    beside = [one for one in offers if dotted_path(one.path[:-1]) == at.rpartition(".")[0]] if at else []
    return exact or below or beside
