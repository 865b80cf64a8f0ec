"""The one command of the generator: start, check, build, serve, check-site, news, texts.

`book.py` runs it in a checkout, where the book itself is the edition unless `--firm` names another. The wheel installs it as
`lidbook`, which works on the `firm.yml` of the folder that it is called in.
"""

import argparse
import sys
from pathlib import Path

from handbook import build, check, live, serve
from handbook.firm import started
from handbook.host import stamp
from handbook.lint import texts
from handbook.make import skin
from handbook.site_check import __main__ as site_check

FIRM = "firm.yml"


def main(arguments: list[str], name: str = "book.py", *, own: bool = False) -> int:
    """Run one command; `own` where the folder that it is called in is an edition, and not the book."""
    options = _parser(name, own).parse_args(arguments)
    if options.command is None:
        _parser(name, own).print_help()
        return 0
    if options.command == "start":
        return started.start(options.folder, build.ROOT, name)
    if options.command == "news":
        print(started.news(build.ROOT, options.since))
        return 0
    if options.command == "check-site":
        return site_check.main([options.where])
    if options.command == "texts":
        return texts.main()
    firm = options.firm or (Path(FIRM) if own else None)
    if firm and not firm.is_file():
        print(f"There is no file {firm}. Start an edition: {name} start my-firm. Or name its file: {name} {options.command} --firm my-firm/firm.yml")  # fmt: skip
        return 2
    try:
        return _on_edition(options, firm, own)
    except KeyboardInterrupt:
        print()
        return 130


def _on_edition(options: argparse.Namespace, firm: Path | None, own: bool) -> int:
    """Check, build or serve the edition of the file `firm`, or the book."""
    folder = firm.resolve().parent / build.WORK if firm and own else build.BUILD
    site = firm.resolve().parent / "site" if firm and own else build.SITE
    if firm and own:
        folder.mkdir(exist_ok=True)
        started.say_news(build.ROOT, folder)
    if options.command == "check":
        status = build.check_firm(firm, folder / "firm", folder / "cache") if firm else check.check()
        print("  no fault" if status == 0 else "  faults, see above", flush=True)
        return status
    if options.command == "serve" and options.live:
        return live.run(firm, folder, options.port, options.base)
    spoken = getattr(options, "language", None)
    if firm:
        language = ("--language", str(spoken.resolve())) if spoken else ()
        told = ("--skin", options.skin) if options.skin else ()
        status = build.build_firm(firm, site, folder / "firm", *language, *told, cache=folder / "cache")
    else:
        chosen = options.skin or skin.OWN
        status = build.build_in(spoken, chosen) if spoken else build.build(chosen)
    if status or options.command == "build":
        return status
    return serve.serve(options.port, options.base, site)


def _parser(name: str, own: bool) -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog=name, description="Make a field handbook for ceilings, and a firm's edition of it."
    )
    parser.add_argument("--version", action="version", version=stamp.edition(build.ROOT)["number"])
    commands = parser.add_subparsers(dest="command")
    start = commands.add_parser(
        "start", help="start an edition in an empty folder, from a sample that explains every key"
    )
    start.add_argument("folder", type=Path, nargs="?", default=Path())
    looks = commands.add_parser("check", help="every fault of an edition at once, by line")
    makes = commands.add_parser("build", help="build an edition into site/")
    makes.add_argument("--language", type=Path, help="a file of texts for the calculators, by their keys")
    serves = commands.add_parser("serve", help="build, and serve at a printed local address")
    serves.add_argument("--port", type=int, default=8000)
    serves.add_argument("--base", default="/", help="serve under this path, for example /book/")
    serves.add_argument(
        "--live", action="store_true", help="show what is saved at once, instead of serving as a host does"
    )
    whose = (
        f"the firm's file; {FIRM} here if not told"
        if own
        else f"the file that makes the book a firm's, such as docs/firm/{FIRM}"
    )
    for one in (looks, makes, serves):
        one.add_argument("--firm", type=Path, help=whose)
    site = commands.add_parser(
        "check-site", help="look at a published site: files, headers, links, nothing from elsewhere"
    )
    site.add_argument("where", help="its address, or its folder")
    tells = commands.add_parser("news", help="what changed for publishers since an edition")
    tells.add_argument("since", nargs="?", default="", help="a version, such as 0.7.0")
    commands.add_parser("texts", help="list every text of the calculators: its key, a tab, its English")
    return parser


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
