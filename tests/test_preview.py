"""The preview gives out the built folder and nothing else, to this computer alone, and never goes stale."""

from __future__ import annotations

import signal
import socket
import subprocess
import threading
import time
import urllib.request
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from bs4 import BeautifulSoup
from flask.testing import FlaskClient

from leafmould.preview.live import Live
from leafmould.preview.server import find_file, listen, make_app, run
from leafmould.preview.strip import MOST, decorated, missing_page, strip
from leafmould.values.problems import LeafmouldError, Level, Location, Problem, UnreadableGarden
from leafmould.watch import Watch
from previews import preview_command

PAGE = '<!DOCTYPE html><html lang="en"><head><title>Arch</title></head><body><p>Peas</p></body></html>'
ADDED = '<script src="/.leafmould/preview.js" data-version="{version}"></script>'
AT = Location(file="notes/2026/06-20-arch.md", line=4)


def problem(message: str, level: Level = Level.ERROR) -> Problem:
    return Problem(at=AT, level=level, message=message, field="work[1]", suggestion="North")


@pytest.fixture
def site(tmp_path: Path) -> Path:
    site = tmp_path / "site"
    (site / "beds").mkdir(parents=True)
    (site / "index.html").write_text(PAGE, encoding="utf-8")
    (site / "beds" / "möhren.html").write_text(PAGE, encoding="utf-8")
    (site / "style.css").write_text("p { color: green }", encoding="utf-8")
    (site / ".leafmould-new").write_text("half a file", encoding="utf-8")
    (tmp_path / "garden.yaml").write_text("secret", encoding="utf-8")
    return site


@pytest.fixture
def live() -> Live:
    return Live(lambda: ())


@pytest.fixture
def client(site: Path, live: Live) -> FlaskClient:
    return make_app(site, live).test_client()


def test_pages_come_with_the_script_and_files_as_they_are(client: FlaskClient, live: Live) -> None:
    added = ADDED.format(version=live.state.version)
    for address in ("/", "/index.html", "/beds/m%C3%B6hren.html"):
        answer = client.get(address)
        assert answer.status_code == 200
        assert answer.text == PAGE.replace("</body>", added + "</body>")
        assert answer.content_type == "text/html; charset=utf-8"
    answer = client.get("/style.css")
    assert (answer.text, answer.content_type) == ("p { color: green }", "text/css; charset=utf-8")


def test_nothing_is_kept_by_the_browser(client: FlaskClient) -> None:
    for address in ("/", "/style.css", "/nowhere.html", "/.leafmould/version"):
        answer = client.get(address)
        assert answer.headers["Cache-Control"] == "no-store"
        assert answer.headers["X-Content-Type-Options"] == "nosniff"


@pytest.mark.parametrize(
    "address",
    [
        "/../garden.yaml",
        "/beds/../../garden.yaml",
        "/%2e%2e/garden.yaml",
        "/%2e%2e%2fgarden.yaml",
        "/..%5cgarden.yaml",
        "/%252e%252e/garden.yaml",
        "/beds//../garden.yaml",
        "/C:/garden.yaml",
        "/C:garden.yaml",
        "/.leafmould-new",
        "/.leafmould/",
        "/.leafmould/../../garden.yaml",
        "/index.html%00.css",
        "/index.html/",
        "/beds",
        "/beds/",
        "/" + "long" * 500,
        "/out/garden.yaml",
        "/out.yaml",
    ],
)
def test_no_address_leads_out_of_the_site(client: FlaskClient, site: Path, address: str) -> None:
    (site / "out").symlink_to(site.parent, target_is_directory=True)
    (site / "out.yaml").symlink_to(site.parent / "garden.yaml")
    answer = client.get(address)
    assert answer.status_code == 404
    assert "secret" not in answer.text


@pytest.mark.parametrize(
    "address", ["/etc/passwd", "../garden.yaml", "a\\..\\b", "~/x", "\0", ".", "..", "a/./b"]
)
def test_addresses_are_refused_before_the_disk_is_asked(site: Path, address: str) -> None:
    assert find_file(site, address) is None


@pytest.mark.parametrize(
    "asked", ["//garden.yaml", "/{folder}/garden.yaml", "//{folder}/garden.yaml", "garden.yaml"]
)
def test_an_absolute_path_stays_inside(client: FlaskClient, site: Path, asked: str) -> None:
    asked = asked.format(folder=site.parent)
    answer = client.get("/", environ_overrides={"PATH_INFO": asked})
    assert answer.status_code == 404
    assert "secret" not in answer.text


@pytest.mark.parametrize(
    "host", ["evil.example", "evil.example:80", "127.0.0.1.evil.example", "0.0.0.0:8000"]
)
def test_a_foreign_name_is_refused(client: FlaskClient, host: str) -> None:
    assert client.get("/", headers={"Host": host}).status_code == 403


def test_another_computer_is_refused(client: FlaskClient) -> None:
    assert client.get("/", environ_overrides={"REMOTE_ADDR": "192.168.1.7"}).status_code == 403


def test_only_reading_is_allowed(client: FlaskClient) -> None:
    assert client.post("/").status_code == 405
    assert client.delete("/index.html").status_code == 405


def test_the_version_changes_with_every_build(client: FlaskClient, live: Live) -> None:
    seen = {client.get("/.leafmould/version").text}
    for _ in range(3):
        live.rebuild()
        seen.add(client.get("/.leafmould/version").text)
    assert len(seen) == 4


def test_problems_stand_on_the_page_escaped() -> None:
    state = Live(
        lambda: (problem('no bed is called "<b>Nroth</b>".'), problem("hidden", Level.HINT))
    ).rebuild()
    soup = BeautifulSoup(decorated(PAGE, state), "html.parser")
    assert soup.select_one("#leafmould-preview summary") is not None
    assert [item.text for item in soup.select("#leafmould-preview li")] == [
        'error: notes/2026/06-20-arch.md:4: work[1]: no bed is called "<b>Nroth</b>". Did you mean "North"?'
    ]
    assert soup.select("#leafmould-preview b") == []
    assert soup.select_one("#leafmould-preview summary").text == "1 error."


def test_a_garden_without_problems_has_no_strip() -> None:
    assert strip(Live(lambda: (problem("only a hint.", Level.HINT),)).rebuild()) == ""


def test_a_long_list_ends_with_a_count() -> None:
    state = Live(lambda: tuple(problem(f"slip {n:03}.") for n in range(MOST + 12))).rebuild()
    soup = BeautifulSoup(strip(state), "html.parser")
    assert len(soup.select("li")) == MOST
    assert soup.select("details > p")[0].text == "… and 12 more: leafmould check --all"


def test_a_page_without_an_end_still_gets_the_script(live: Live) -> None:
    assert decorated("<p>Peas", live.state) == "<p>Peas" + ADDED.format(version=live.state.version)


def test_an_unreadable_garden_keeps_the_old_site_and_says_so(client: FlaskClient, site: Path) -> None:
    sentence = "garden.yaml:3: this line cannot be read: <a tab> stands where spaces are wanted."
    answers = [lambda: (problem("one slip."),), _refuse(sentence), lambda: ()]
    live = Live(lambda: answers.pop(0)())
    client = make_app(site, live).test_client()
    live.rebuild()
    live.rebuild()
    soup = BeautifulSoup(client.get("/").text, "html.parser")
    assert soup.select_one("body > p").text == "Peas"
    assert soup.select_one("#leafmould-preview strong").text == f"The page is as it was before: {sentence}"
    assert len(soup.select("#leafmould-preview li")) == 1
    live.rebuild()
    assert BeautifulSoup(client.get("/").text, "html.parser").select("#leafmould-preview") == []


def _refuse(sentence: str) -> Callable[[], tuple[Problem, ...]]:
    def build() -> tuple[Problem, ...]:
        raise UnreadableGarden(sentence)

    return build


def test_a_missing_page_says_so_and_comes_back_to_life(client: FlaskClient, live: Live) -> None:
    answer = client.get("/beds/gone.html")
    assert answer.status_code == 404
    assert answer.text == missing_page(live.state)
    assert "There is no such page (any more)." in answer.text
    assert ADDED.format(version=live.state.version) in answer.text


def test_a_taken_port_is_said_in_one_sentence() -> None:
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        with pytest.raises(LeafmouldError) as refused:
            listen(port)
    assert refused.value.sentence == (
        f"Port {port} is taken by another program. Leave --port out to take a free one."
    )
    assert refused.value.exit_code == 3


def test_a_port_kept_for_the_system_is_said_in_one_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(_: object) -> socket.socket:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(socket, "create_server", refuse)
    with pytest.raises(LeafmouldError) as refused:
        listen(80)
    assert refused.value.sentence == "Port 80 is kept for the system. Leave --port out to take a free one."


GARDEN = "garden: Tansy Hill\ndates: day first\nbeds:\n  - {name: Arch}\n"


@pytest.fixture
def previewing(tmp_path: Path) -> Iterator[tuple[Path, subprocess.Popen[str], str]]:
    """The command itself at work on a garden, with its address."""
    (tmp_path / "notes").mkdir()
    (tmp_path / "garden.yaml").write_text(GARDEN, encoding="utf-8")
    with subprocess.Popen(
        preview_command("2026-06-20"), cwd=tmp_path, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
    ) as process:
        assert process.stdout is not None
        said = process.stdout.readline()
        try:
            yield tmp_path, process, said.split()[4]
        finally:
            process.kill()


def fetch(address: str) -> str:
    with urllib.request.urlopen(address, timeout=5) as answer:
        return str(answer.read().decode("utf-8"))


def changed_from(address: str, version: str) -> str:
    end = time.monotonic() + 15
    while (now := fetch(address + ".leafmould/version")) == version and time.monotonic() < end:
        time.sleep(0.05)
    assert now != version
    return now


def test_the_command_serves_rebuilds_and_ends_cleanly(
    previewing: tuple[Path, subprocess.Popen[str], str],
) -> None:
    folder, process, address = previewing
    assert address.startswith("http://127.0.0.1:")
    assert "Tansy Hill" in fetch(address)
    version = fetch(address + ".leafmould/version")
    note = folder / "notes" / "2026-06-18.md"
    note.write_text("---\ndate: 2026-06-18\nwork:\n  - sowed peas in Acrh\n---\n", encoding="utf-8")
    version = changed_from(address, version)
    assert "1 question." in BeautifulSoup(fetch(address), "html.parser").select_one("#leafmould-preview").text
    (folder / "garden.yaml").write_bytes(b"\xff\xfe\x00")
    version = changed_from(address, version)
    page = BeautifulSoup(fetch(address), "html.parser")
    assert page.select_one("#leafmould-preview strong").text.startswith(
        "The page is as it was before: garden.yaml"
    )
    assert "Tansy Hill" in page.text
    (folder / "garden.yaml").write_text(GARDEN.replace("Arch", "Acrh"), encoding="utf-8")
    changed_from(address, version)
    assert BeautifulSoup(fetch(address), "html.parser").select("#leafmould-preview") == []
    process.send_signal(signal.SIGINT)
    said, faults = process.communicate(timeout=15)
    assert faults == ""
    assert process.returncode == 0
    assert said.splitlines()[0] == "notes/2026-06-18.md changed. 1 question."
    assert not (folder / ".leafmould" / "preview").exists()
    assert not (folder / "site").exists()


def test_a_mistake_of_ours_ends_the_preview_with_its_traceback(tmp_path: Path, site: Path) -> None:
    garden = tmp_path / "garden"
    (garden / "notes").mkdir(parents=True)
    before = signal.signal(signal.SIGTERM, signal.default_int_handler)
    builds: list[int] = []

    def build() -> tuple[Problem, ...]:
        builds.append(1)
        if len(builds) > 1:
            raise KeyError("bed")
        return ()

    def write() -> None:
        (garden / "notes" / "2026-06-18.md").write_text("weeded Arch\n", encoding="utf-8")

    said: list[str] = []
    later = threading.Timer(0.5, write)
    later.start()
    with pytest.raises(KeyError, match="bed"):
        run(
            Watch(garden, tell=said.append),
            Live(build),
            site,
            port=0,
            tell=said.append,
            changed=lambda *_: None,
        )
    later.join()
    signal.signal(signal.SIGTERM, before)
    assert said[0].startswith("The garden is at http://127.0.0.1:")


def test_many_requests_at_once_put_no_words_of_the_server_on_the_terminal(
    previewing: tuple[Path, subprocess.Popen[str], str],
) -> None:
    _, process, address = previewing
    with ThreadPoolExecutor(max_workers=24) as browsers:
        pages = list(browsers.map(fetch, [address] * 96))
    assert all("Tansy Hill" in page for page in pages)
    process.send_signal(signal.SIGINT)
    _, faults = process.communicate(timeout=15)
    assert faults == ""
