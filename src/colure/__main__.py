"""`python -m colure` is the same as `colure`."""

from colure.app.cli import main

if __name__ == "__main__":
    main()
