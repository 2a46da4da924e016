"""Pictures as plates: what they show in words, their day, their beds and crops, and where they lead.

A note shows all its pictures. Beds, crops and seasons show a few, from the whole of their time, each leading to
its note. Knows sizes from the pictures' heads; no picture has to be made before a page is.
"""

from __future__ import annotations

from collections.abc import Iterable

from leafmould.garden.album import spread
from leafmould.garden.model import Entry, Photo, Planting
from leafmould.pages.addresses import photo_address
from leafmould.pages.figures import day_text, when_figure
from leafmould.pages.ledger import MOST_PLATES, Ledger
from leafmould.pages.page import Figure, Link, PictureFile, Plate

MOST_ON_CROP = 6
"""Pictures on the page of a crop."""
MOST_ON_SEASON = 12
"""Pictures on the page of a season, the one it opens with among them."""

DATED_BY = {"file name": "by its file’s name", "camera": "by the camera’s clock", "note": ""}


def note_plates(entry: Entry, ledger: Ledger) -> tuple[dict[str, Plate], tuple[Plate, ...]]:
    """The plates that stand in a note's text, by the names they have there, and those below it."""
    photos = ledger.album.by_note.get(entry.id, ())
    in_text = {photo.name: _in_note(photo, entry, ledger) for photo in photos if photo.is_in_text}
    return in_text, tuple(_in_note(photo, entry, ledger) for photo in photos if not photo.is_in_text)


def own_plates(entry: Entry, ledger: Ledger) -> tuple[dict[str, Plate], tuple[Plate, ...]]:
    """The same for a page of the gardener's own: each plate leads to the note that shows the picture too, if one does.

    Its day is told only there: on a page without a date nothing says where the day of a picture comes from.
    """
    photos = ledger.album.by_note.get(entry.id, ())
    in_text = {photo.name: _on_own_page(photo, ledger) for photo in photos if photo.is_in_text}
    return in_text, tuple(_on_own_page(photo, ledger) for photo in photos if not photo.is_in_text)


def _on_own_page(photo: Photo, ledger: Ledger) -> Plate:
    files = _files(photo)
    if not files:
        return Plate(files=(), alt=_in_words(photo), caption=photo.caption)
    same = ledger.album.in_notes.get(photo.key or photo.path)
    to = ledger.to_note(same.entry) if same else files[-1].to
    on = when_figure(same.when, to=to) if same and same.when else None
    caption = photo.caption or (same.caption if same else "")
    return Plate(
        files=files,
        alt=caption or _alt(photo, ledger),
        caption=caption,
        on=on,
        about=_about(same or photo, ledger),
        to=to,
    )


def planting_plate(planting: Planting, ledger: Ledger) -> Plate | None:
    """The newest picture of a planting from the season it began in, in which its section stands."""
    home = ledger.home_year(planting)
    known = ledger.album.by_planting.get(planting.id, ())
    photos = [photo for photo in known if photo.when and ledger.year_of(photo.when.first) == home]
    return elsewhere(photos[-1], ledger) if photos else None


def bed_year_plates(bed: str, year: int, shown: Iterable[Plate], ledger: Ledger) -> tuple[Plate, ...]:
    """Some pictures of a season of a bed, without those its plantings show already."""
    there = {plate.files for plate in shown}
    photos = [p for p in ledger.album.by_bed_year.get((bed, year), ()) if _files(p) not in there]
    return tuple(elsewhere(p, ledger, bed=bed) for p in spread(photos, MOST_PLATES))


def crop_plates(crop: str, ledger: Ledger) -> tuple[Plate, ...]:
    """Some pictures of a crop, newest first."""
    photos = spread(ledger.album.by_crop.get(crop, ()), MOST_ON_CROP)
    return tuple(elsewhere(photo, ledger, crop=crop) for photo in reversed(photos))


def season_plates(year: int, ledger: Ledger, *, opening: Plate | None) -> tuple[Plate, ...]:
    """Some pictures of a season, in its order, without the one its page opens with."""
    photos = [p for p in ledger.album.by_year.get(year, ()) if not opening or _files(p) != opening.files]
    most = MOST_ON_SEASON - (1 if opening else 0)
    return tuple(elsewhere(photo, ledger) for photo in spread(photos, most))


def _in_note(photo: Photo, entry: Entry, ledger: Ledger) -> Plate:
    files = _files(photo)
    is_own_day = photo.when == entry.when
    return Plate(
        files=files,
        alt=_alt(photo, ledger) if files else _in_words(photo),
        caption=photo.caption,
        on=when_figure(photo.when) if photo.when else None,
        dated_by="" if is_own_day else DATED_BY[photo.dated_by],
        about=_about(photo, ledger),
        to=files[-1].to if files else "",
    )


def elsewhere(photo: Photo, ledger: Ledger, *, bed: str = "", crop: str = "") -> Plate:
    """A picture away from its note: it leads there, and names what it shows but for what the page is about."""
    to = ledger.to_note(photo.entry)
    return Plate(
        files=_files(photo),
        alt=_alt(photo, ledger),
        caption=photo.caption,
        on=when_figure(photo.when, to=to) if photo.when else Figure(text="no date", value="", to=to),
        about=_about(photo, ledger, bed=bed, crop=crop),
        to=to,
    )


def _files(photo: Photo) -> tuple[PictureFile, ...]:
    return tuple(
        PictureFile(to=photo_address(photo.key, width), width=width, height=height)
        for width, height in photo.sizes
    )


def _about(photo: Photo, ledger: Ledger, *, bed: str = "", crop: str = "") -> tuple[Link, ...]:
    """The beds and crops on it, but for the one whose page this is."""
    beds = (ledger.bed_links[key] for key in photo.beds if key in ledger.bed_links and key != bed)
    crops = (ledger.crop_links[key] for key in photo.crops if key in ledger.crop_links and key != crop)
    return (*beds, *crops)


def _alt(photo: Photo, ledger: Ledger) -> str:
    """The caption; else a plain sentence of crop, bed and day."""
    if photo.caption:
        return photo.caption
    crops = " and ".join(ledger.crop_links[key].text for key in photo.crops if key in ledger.crop_links)
    beds = " and ".join(ledger.bed_links[key].text for key in photo.beds if key in ledger.bed_links)
    what = crops or ("A view" if beds else "A picture from the garden")
    where = f" in {beds}" if crops and beds else f" of {beds}" if beds else ""
    day = f", {day_text(photo.when)}" if photo.when else ""
    return f"{what[:1].upper()}{what[1:]}{where}{day}."


def _in_words(photo: Photo) -> str:
    """The line that stands in place of a picture that cannot be shown."""
    name = photo.name.replace("\\", "/").rpartition("/")[2]
    return f"Picture: {name}, {photo.caption}" if photo.caption else f"Picture: {name}"
