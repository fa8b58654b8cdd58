#!/usr/bin/python3
"""Every text of a DXF file as ezdxf shows it: dxf_texts.py FILE"""

import sys

import ezdxf
from ezdxf.lldxf.encoding import decode_dxf_unicode
from ezdxf.tools.text import plain_text

for text in ezdxf.readfile(sys.argv[1]).modelspace().query("TEXT"):
    print(plain_text(decode_dxf_unicode(text.dxf.text)))
