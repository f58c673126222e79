#!/bin/sh
# Installs the calendar programs that tests/clients subscribe with, on Debian 12 or later. Run it as root.
set -eu
apt-get update
apt-get install -y --no-install-recommends vdirsyncer khal python3-icalendar python3-gi gir1.2-ical-3.0
