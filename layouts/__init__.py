"""Paper: stock, sheets, text set to fit, codes, and the PDF writer. It knows no trade."""
