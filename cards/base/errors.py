"""Faults and refusals, under their old name."""

from tagend.layouts.base.faults import Fault as Fault
from tagend.layouts.base.faults import Refused as Refused
from tagend.layouts.base.faults import below as below
from tagend.layouts.base.faults import noting as noting
from tagend.layouts.base.faults import refuse_any as refuse_any
from tagend.layouts.base.faults import refused as refused
from tagend.layouts.base.faults import under as under
