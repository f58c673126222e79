"""Reads a feed over HTTP with python3-icalendar and prints what it holds, one JSON object a line."""
import json
import sys
from datetime import datetime, timezone
from urllib.request import urlopen

from icalendar import Calendar


def start_of(value):
    if isinstance(value, datetime):
        return value.astimezone(timezone.utc).strftime("%Y-%m-%dT%H:%M:%S.000Z")
    return value.isoformat()


with urlopen(sys.argv[1], timeout=30) as answer:
    calendar = Calendar.from_ical(answer.read())
for event in calendar.walk("VEVENT"):
    if event.errors:
        sys.exit(f"errors in {event['UID']}: {event.errors}")
    seen = {
        "uid": str(event["UID"]),
        "start": start_of(event["DTSTART"].dt),
        "title": str(event["SUMMARY"]),
        "sequence": int(event["SEQUENCE"]),
    }
    print(json.dumps(seen))
