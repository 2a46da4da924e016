"""The commands: read options, call one function, show what it gave, end with its exit code.

The edge of the program. Today's date is taken here and nowhere else; what the surroundings did to us is
said here once. Every command loads only what it needs, so that a note is put down in half a second.
"""

from __future__ import annotations

import atexit
import gc
import sys
from collections.abc import Callable, Sequence
from contextlib import suppress
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from leafmould import __version__
from leafmould.terminal import progress, say, say_json
from leafmould.values.problems import LeafmouldError, WrongUse

if TYPE_CHECKING:
    from leafmould.desk.answer import Answer
    from leafmould.garden.load import Loaded
    from leafmould.report import BuildReport

Command = TypeVar("Command", bound=Callable[..., Any])


class Commands(click.Group):
    """The group that shows what went wrong, once and in one sentence."""

    def main(self, *args: Any, **options: Any) -> Any:
        """Run, and put what the disk or the terminal refuses into words.

        A command ends long before Python would gain by looking for values that have gone: a tenth of the time.
        """
        from leafmould.desk.surroundings import let_go_of_output, sentence_of

        if not args and options.get("args") is None:  # the system started us, and nobody else lives here
            gc.disable()
            atexit.register(gc.freeze)
        try:
            return super().main(*args, **options)
        except OSError as fault:
            if (sentence := sentence_of(fault)) is None:
                raise
            with suppress(OSError):
                say(sentence, err=True)
            let_go_of_output()
            sys.exit(LeafmouldError.exit_code)

    def invoke(self, ctx: click.Context) -> Any:
        """Run a command."""
        try:
            return super().invoke(ctx)
        except LeafmouldError as fault:
            say(fault.sentence, err=True)
            ctx.exit(fault.exit_code)
        except click.Abort:
            say("\nStopped.", err=True)
            ctx.exit(LeafmouldError.exit_code)


def shared(command: Command) -> Command:
    """The options every command on a garden takes."""
    command = click.option("--on", metavar="DATE", help="Take this day for today.")(command)
    return click.option(
        "--garden", metavar="FOLDER", help="The garden; else the nearest folder upwards with garden.yaml."
    )(command)


as_json = click.option("--json", "as_json", is_flag=True, help="Answer as JSON, for other programs.")


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
@click.version_option(__version__, "--version", message="%(prog)s %(version)s")
def main() -> None:
    """Turn a gardener's notes into a site that remembers, reckons and plans.

    \b
    Exit codes: 0 fine, 1 errors in the notes, 2 wrong use, 3 the surroundings failed.
    """


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option("--name", help="What the garden is called.")
@click.option("--last-frost", metavar="DAY", help='Average last frost of spring, such as "22 May".')
@click.option("--first-frost", metavar="DAY", help='Average first frost of autumn, such as "25 September".')
@click.option("--latitude", metavar="DEGREES", help="Degrees north; never published.")
@click.option(
    "--units",
    type=click.Choice(["metric", "imperial"]),
    default="metric",
    show_default=True,
    help="The units sums are shown in; what you write keeps its own.",
)
@click.option(
    "--bed", "beds", multiple=True, metavar="NAME", help='A bed; may be given often. "Old pear (tree)"'
)
@click.option(
    "--stands", multiple=True, metavar="WHAT", help='What stands there now: "Long border: leek, kale".'
)
@click.option(
    "--before", multiple=True, metavar="WHAT", help='What grew before: "2025: Long border: potato".'
)
@click.option("--on", metavar="DATE", help="Take this day for today.")
def start(
    folder: Path,
    name: str | None,
    last_frost: str | None,
    first_frost: str | None,
    latitude: str | None,
    units: str,
    beds: tuple[str, ...],
    stands: tuple[str, ...],
    before: tuple[str, ...],
    on: str | None,
) -> None:
    """Make a garden in FOLDER. Asks for what it needs, unless options say it."""
    from leafmould.desk import answers as desk
    from leafmould.desk.start import assumed_lines, check_empty, make_garden, next_lines
    from leafmould.desk.surroundings import command

    check_empty(folder)
    day = day_of(on)
    given = desk.Answers(
        name=desk.one_line(name or ""),
        last_frost=desk.read_frost(last_frost) if last_frost else None,
        first_frost=desk.read_frost(first_frost) if first_frost else None,
        latitude=desk.read_latitude(latitude) if latitude else None,
        units="imperial" if units == "imperial" else "metric",
        places=tuple(map(desk.read_place, beds)),
        stands=tuple(s for text in stands for s in desk.read_stands(text, day)),
        before=tuple(row for text in before for row in desk.read_before(text, day)),
    )
    if given == desk.Answers(name="", units=given.units):
        given = desk.ask_all(_ask, say, given, day, stopped=click.Abort)
    made = make_garden(folder, desk.named(given, folder))
    say(f"Made a garden in {folder}:")
    for file in made:
        say(f"  {file}")
    say("\n".join([*assumed_lines(given), *next_lines(folder, command(sys.argv[0]))]))


@main.command(context_settings={"ignore_unknown_options": True})
@click.argument("words", nargs=-1, type=click.UNPROCESSED)
@shared
@click.option(
    "--date", "dated", metavar="DATE", help='When it was done, if not today: "yesterday", "12 June".'
)
@click.option(
    "--photo",
    "photos",
    multiple=True,
    metavar="FILE",
    type=click.Path(path_type=Path),
    help="A picture; copied to photos/ if need be.",
)
@click.option("--private", "is_private", is_flag=True, help="Keep it out of the public site.")
@as_json
def note(
    words: tuple[str, ...],
    garden: str | None,
    on: str | None,
    dated: str | None,
    photos: tuple[Path, ...],
    is_private: bool,
    as_json: bool,
) -> None:
    """Put down what was done: leafmould note sowed beetroot Long border, weeded Arch

    A single - reads many lines from standard input, one thing or several on each.
    """
    from leafmould.desk.answer import understood
    from leafmould.desk.note import put_down, typed_lines

    _refuse_unknown_options(words)
    folder, day = _garden(garden), day_of(on)
    lines = typed_lines(words, _read_all)
    file = put_down(folder, lines, day, dated, photos, is_private=is_private)
    with progress("Reading the notes"):
        told = understood(folder, file, day)
    _tell_note(told, file, as_json)


@main.command()
@click.argument("garden_folder", metavar="[GARDEN]", required=False)
@shared
@click.option(
    "--to", type=click.Path(path_type=Path), metavar="OUT", help="Where the site goes. [default: site/]"
)
@click.option("--household", is_flag=True, help="Keep private things in. For your own eyes.")
@click.option("--workers", type=click.IntRange(min=1), help="How many processes may work at once.")
@as_json
def build(
    garden_folder: str | None,
    garden: str | None,
    on: str | None,
    to: Path | None,
    household: bool,
    workers: int | None,
    as_json: bool,
) -> None:
    """Make the site of a garden. Without --household, private things are left out."""
    from leafmould.again import build_again

    folder = _garden(garden_folder or garden)
    out = to or folder / "site"
    with progress("Building"):
        built = build_again(folder, to=out, on=day_of(on), household=household, workers=workers)
    _tell_build(built, out, as_json)


@main.command()
@shared
@click.option(
    "--all", "everything", is_flag=True, help="All of every file, not only errors and the newest five files."
)
@click.option("--forecasts", is_flag=True, help="Show how expected pickings turned out so far, instead.")
@as_json
def check(garden: str | None, on: str | None, everything: bool, forecasts: bool, as_json: bool) -> None:
    """List what in the notes could not be read or is doubtful."""
    if forecasts:
        _check_forecasts(garden, on, as_json)
        return
    from leafmould.garden.pictures import load_pictured
    from leafmould.lookup.lines import lines_of
    from leafmould.report import NEWEST, exit_code, problem_lines, problems_json

    with progress("Reading the notes"):
        loaded = load_pictured(_garden(garden), on=day_of(on))
    problems = loaded.problems
    if as_json:
        say_json(problems_json(problems, loaded.garden.on))
    else:
        words = lines_of(_garden(garden))
        lines = problem_lines(problems, loaded.dates, most=None if everything else NEWEST, words=words)
        say("\n".join(lines))
    raise click.exceptions.Exit(exit_code(problems))


@main.command()
@click.argument("words", nargs=-1, required=True)
@shared
@click.option("--all", "everything", is_flag=True, help="All notes, not only the newest twenty.")
@as_json
def find(words: tuple[str, ...], garden: str | None, on: str | None, everything: bool, as_json: bool) -> None:
    """Look back: leafmould find long border 2023

    WORDS may name beds, crops, varieties, families, years, actions or any word of a note; all must fit.
    """
    from leafmould.lookup.memory import Memory
    from leafmould.lookup.recollect import recalled
    from leafmould.lookup.wording import found_json, found_lines

    folder, day = _garden(garden), day_of(on)
    held = recalled(folder, day, lambda: _load(folder, day))
    found = Memory(held).find(words)
    if as_json:
        say_json(found_json(found))
    else:
        say("\n".join(found_lines(found, everything=everything)))


@main.command()
@click.argument("words", metavar="CROP...", nargs=-1, required=True)
@shared
@as_json
def facts(words: tuple[str, ...], garden: str | None, on: str | None, as_json: bool) -> None:
    """Show what is published of a crop and what was seen of it here: leafmould facts beetroot

    Works without a garden too; then only what is published is shown.
    """
    from leafmould.lookup.crop_facts import ask_facts

    folder = _garden_if_any(garden)
    loaded = _load(folder, day_of(on)) if folder else None
    answer = ask_facts(words, loaded, day_of(on))
    if as_json:
        say_json(answer.json())
    else:
        say("\n".join(answer.lines()))


@main.command()
@shared
@click.option(
    "--port", type=click.IntRange(0, 65535), default=0, help="The port to serve on. [default: a free one]"
)
@click.option("--poll", is_flag=True, help="Look for changes every few seconds, for network shares.")
def preview(garden: str | None, on: str | None, port: int, poll: bool) -> None:
    """Show the garden on this computer, private things too, and keep it up to date."""
    from leafmould.preview.serve import preview as serve

    gc.enable()  # a preview lives long
    folder = _garden(garden)
    fixed = day_of(on) if on else None
    serve(folder, day=lambda: fixed or today(), port=port, poll=poll, tell=say)


def today() -> date:
    """The one place where the clock is read."""
    return date.today()


def day_of(text: str | None) -> date:
    """The day an option gives; today if it was left out."""
    from leafmould.desk.days import read_day

    return today() if text is None else read_day(text, today())


def _garden(folder: str | None) -> Path:
    from leafmould.desk.folders import find_garden

    return find_garden(Path(folder or "."))


def _garden_if_any(folder: str | None) -> Path | None:
    """The garden asked for, or the one we stand in; None where there is none to stand in."""
    from leafmould.desk.folders import garden_above

    return _garden(folder) if folder else garden_above(Path())


def _load(folder: Path, day: date) -> Loaded:
    from leafmould.garden.load import load

    with progress("Reading the notes"):
        return load(folder, on=day, household=True)


def _ask(question: str) -> str:
    from leafmould.desk.surroundings import can_ask

    if not can_ask():
        raise WrongUse("Nobody can be asked here. Give the answers as options; see: leafmould start --help")
    return str(click.prompt(question, default="", show_default=False))


def _read_all() -> str:
    return sys.stdin.buffer.read().decode("utf-8", "replace") if sys.stdin else ""


def _refuse_unknown_options(words: Sequence[str]) -> None:
    """Words may begin with a minus ("-3 °C"), but "--dat" is a slip and no word of a note."""
    for word in words:
        if word.startswith("--") and word[2:3].isalpha():
            raise click.NoSuchOption(
                word, possibilities=["--date", "--garden", "--json", "--on", "--photo", "--private"]
            )


def _check_forecasts(garden: str | None, on: str | None, as_json: bool) -> None:
    from leafmould.lookup.forecasts import forecast_lines, forecasts_json
    from leafmould.reckon.almanac import almanac
    from leafmould.reckon.here import forecasts_here

    loaded = _load(_garden(garden), day_of(on))
    here = forecasts_here(loaded.garden, almanac(loaded.shown, loaded.garden))
    if as_json:
        say_json(forecasts_json(here))
    else:
        say("\n".join(forecast_lines(here)))


def _tell_note(told: Answer, file: str, as_json: bool) -> None:
    from leafmould.report import JSON_VERSION, problem_json

    if as_json:
        problems = [problem_json(problem) for problem in told.problems]
        lines = list(told.lines)
        say_json(
            {"version": JSON_VERSION, "file": file, "lines": lines, "problems": problems, "fault": told.fault}
        )
    else:
        fault = [told.fault] if told.fault else []
        say("\n".join([*told.lines, *told.doubts, *fault, f"Written in {file}"]))
    raise click.exceptions.Exit(told.exit_code)


def _tell_build(built: BuildReport, out: Path, as_json: bool) -> None:
    from leafmould.report import count, exit_code, made_json

    if as_json:
        say_json({**made_json(built.made, built.problems), "to": str(out)})
    else:
        say(built.made.sentence)
        if left_out := built.made.left_out.sentence:
            say(left_out)
        say(
            f"In the notes: {count(built.problems).sentence}{' See: leafmould check' if built.problems else ''}"
        )
        say(f"Open {out / 'index.html'}")
    raise click.exceptions.Exit(exit_code(built.problems))
