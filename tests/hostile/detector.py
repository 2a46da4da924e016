"""Notices in a browser that something on a page ran that ought not to, asked for another host, or lies in wait."""

from __future__ import annotations

from playwright.sync_api import Browser, Dialog, Page

CALLED = """
for (const name of ["alert", "confirm", "prompt", "print", "open"]) {
    window[name] = words => caught(name + " " + words);
}
"""

STIRRED = """() => {
    for (const element of document.querySelectorAll("*")) {
        for (const kind of ["mouseover", "mouseenter", "focus", "blur", "toggle", "error", "load", "animationend"]) {
            element.dispatchEvent(new Event(kind));
        }
    }
}"""
"""Wakes what waits for a hand or a mouse."""

IN_WAIT = """top => {
    const found = [];
    const may = new Set(["http:", "https:", "mailto:", "tel:", "file:"]);
    for (const e of document.querySelectorAll("*")) {
        const kind = e.localName;
        const told = words => found.push(words + ": " + e.outerHTML.slice(0, 120));
        for (const { name } of e.attributes) {
            if (/^on/i.test(name) || ["style", "srcdoc", "ping", "formaction", "xlink:href", "action"].includes(name)) told(name);
        }
        if (["style", "iframe", "frame", "object", "embed", "base", "animate", "set", "foreignobject"].includes(kind)) told(kind);
        if (kind === "script" && !(e.src && e.src.startsWith(top + "look/") && !e.textContent)) told("script");
        if (kind === "link" && !e.href.startsWith(top)) told("link");
        if (kind === "img" && !e.src.startsWith(top + "photos/")) told("picture");
        if (kind === "meta" && /refresh/i.test(e.httpEquiv)) told("refresh");
        if (e.namespaceURI.endsWith("svg") && kind === "a" && !/^[\\w/.#%-]*$/.test(e.getAttribute("href") || "")) told("drawing");
        if (kind === "a" && e.hasAttribute("href")) {
            if (!may.has(e.protocol) || (e.protocol === "file:" && !e.href.startsWith(top))) told("link");
        }
    }
    return found;
}"""
"""What does nothing yet, and would: handlers, foreign elements, links to anything but pages, letters and telephones."""


HELD_BACK = "csp"
"""How the browser says that a request failed by the page's own policy."""


class Detector:
    """A browser's window in which whatever runs is caught."""

    def __init__(self, browser: Browser, top: str, *, without_policy: bool = False) -> None:
        """Take the address of the site's folder, with a slash behind it.

        Args:
            without_policy: let pages do what their policy forbids.
        """
        self.top = top
        self.caught: list[str] = []
        self.said: list[str] = []
        context = browser.new_context(bypass_csp=without_policy)
        context.expose_function("caught", lambda words: self.caught.append(f"{self.page.url}: {words}"))
        context.add_init_script(CALLED)
        context.on("response", lambda response: self._asked(response.url))
        context.on("requestfailed", lambda request: self._asked(request.url, request.failure or ""))
        context.on("dialog", self._answered)
        context.on("console", lambda message: self.said.append(f"{self.page.url}: {message.text}"))
        context.on("weberror", lambda fault: self.said.append(f"{self.page.url}: {fault.error}"))
        self.page: Page = context.new_page()

    def turn_over(self) -> None:
        """Go on with a new window and nothing caught."""
        left, self.page = self.page, self.page.context.new_page()
        left.close()
        self.caught.clear()

    def look_at(self, name: str) -> list[str]:
        """Open a page, stir everything on it, and tell what lies in wait there."""
        self.page.goto(self.top + name)
        self.page.evaluate(STIRRED)
        found: list[str] = self.page.evaluate(IN_WAIT, self.top)
        return [f"{name}: {what}" for what in found]

    def _asked(self, url: str, failure: str = "") -> None:
        """Take down what was asked of others; what the policy held back never left the browser."""
        if not url.startswith((self.top, "data:", "blob:")) and failure != HELD_BACK:
            self.caught.append(f"asked for {url} {failure}")

    def _answered(self, dialog: Dialog) -> None:
        self.caught.append(f"a dialog: {dialog.message}")
        dialog.dismiss()
