"""The command line by another name: `python -m tagend.cards`."""

from tagend.cards.start import main

if __name__ == "__main__":
    main()
