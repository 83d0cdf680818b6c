"""`python -m border` is `border`."""

from border.cli import main

if __name__ == "__main__":
    raise SystemExit(main())
