"""Reads a feed over HTTP with libical and prints what it holds, one JSON object a line."""
import json
import sys
from urllib.request import urlopen

import gi

gi.require_version("ICalGLib", "3.0")
from gi.repository import ICalGLib  # noqa: E402  the version has to be named first

EVENT = ICalGLib.ComponentKind.VEVENT_COMPONENT


def start_of(text):
    day = f"{text[:4]}-{text[4:6]}-{text[6:8]}"
    return day if len(text) == 8 else f"{day}T{text[9:11]}:{text[11:13]}:{text[13:15]}.000Z"


with urlopen(sys.argv[1], timeout=30) as answer:
    calendar = ICalGLib.Component.new_from_string(answer.read().decode("utf-8"))
if calendar.count_errors() > 0:
    sys.exit(f"libical finds {calendar.count_errors()} errors")
event = calendar.get_first_component(EVENT)
while event is not None:
    seen = {
        "uid": event.get_uid(),
        "start": start_of(event.get_dtstart().as_ical_string()),
        "title": event.get_summary(),
        "sequence": event.get_sequence(),
    }
    print(json.dumps(seen))
    event = calendar.get_next_component(EVENT)
