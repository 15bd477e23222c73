package strokes_test

// shapes are drawings without uses, for readers that are asked about one element at a
// time: every shape has an id, and no group has one.
func shapes() map[string]string {
	const head = `<svg xmlns="http://www.w3.org/2000/svg" fill="none" stroke="black" `
	return map[string]string{
		"paths": head + `viewBox="0 0 1200 600">
			<path id="pie" d="M300,200 h-150 a150,150 0 1,0 150,-150 z"/>
			<path id="slice" d="M275,175 v-150 a150,150 0 0,0 -150,150 z"/>
			<path id="blips" d="M600,350 l 50,-25 a25,25 -30 0,1 50,-25 l 50,-25 a25,50 -30 0,1 50,-25
				l 50,-25 a25,75 -30 0,1 50,-25 l 50,-25 a25,100 -30 0,1 50,-25 l 50,-25"/>
			<path id="cubic" d="M100,200 C100,100 250,100 250,200 S400,300 400,200"/>
			<path id="quad" d="M200,300 Q400,50 600,300 T1000,300"/>
			<path id="wave" d="M240 296q25-100 47 0t47 0t47 0t47 0t47 0z"/>
			<path id="two" d="M372 130Q272 50 422 10zm70 0q50-150-80-90z"/>
			<path id="dove" d="M172 193q-100 50 0 50Q72 243 172 293q100 -50 0 -50Q272 243 172 193z"/>
			<path id="leaning" d="M700 400 A120 40 33 1 1 760 430 a30 90 -71 0 0 80 40 A9 4 20 0 1 900 500"/>
		</svg>`,
		"shapes": head + `viewBox="-10 -20 300 200">
			<rect id="plain" x="5" y="6" width="70" height="50"/>
			<rect id="round" x="90" y="6" width="70" height="50" rx="12"/>
			<rect id="oval" x="170" y="6" width="70" height="50" rx="60" ry="20"/>
			<circle id="circle" cx="40" cy="110" r="30.5"/>
			<ellipse id="ellipse" cx="120" cy="110" rx="40" ry="12"/>
			<line id="line" x1="180" y1="90" x2="250" y2="130"/>
			<polyline id="polyline" points="0,150 20,170,40 150 60-17"/>
			<polygon id="polygon" points="100,150 120,170 140,150"/>
		</svg>`,
		"transforms": head + `viewBox="0 0 200 200">
			<g transform="translate(20)"><circle id="a" r="10" cx="10" cy="10"/>
			<g transform="rotate(30)"><rect id="b" width="20" height="10"/>
			<g transform="scale(2 .5) , skewX(20)"><path id="c" d="M0 0H9V9"/></g></g></g>
			<path id="d" d="M0 0C30 0 30 30 60 30" transform="rotate(-45 50 50)skewY(12)translate(5,6)"/>
			<path id="e" d="M0 0L40 20" transform="matrix(.5,.25,-.75,1.5,100,60)"/>
			<circle id="f" cx="150" cy="150" r="20" style="transform: rotate(0.1turn) translateX(3px)"/>
			<path id="g" d="M0 0L40 20A5 5 0 0 0 50 50" style="transform-origin: 20px 30px" transform="scale(1.5)"/>
		</svg>`,
		"units": head + `viewBox="0 0 400 300" width="200mm" height="150mm" font-size="20">
			<line id="mm" x1="1mm" y1="2mm" x2="3cm" y2="10mm"/>
			<line id="in" x1=".5in" y1="6pt" x2="2pc" y2="1in"/>
			<line id="share" x1="10%" y1="20%" x2="90%" y2="50%"/>
			<circle id="ring" cx="50%" cy="50%" r="10%"/>
			<rect id="em" x="1em" y="2em" width="4em" height="40px" rx="8q"/>
			<g style="font-size: 150%"><circle id="big" cx="5em" cy="3em" r="1em"/></g>
		</svg>`,
		"viewports": head + `viewBox="0 0 400 300">
			<svg x="10" y="20" width="100" height="60" viewBox="0 0 30 40"><circle id="mid" cx="15" cy="20" r="14"/></svg>
			<svg x="150" y="20" width="100" height="60" viewBox="0 0 30 40" preserveAspectRatio="xMinYMax"><circle id="min" cx="15" cy="20" r="14"/></svg>
			<svg x="10" y="100" width="100" height="60" viewBox="0 0 30 40" preserveAspectRatio="none"><circle id="none" cx="15" cy="20" r="14"/></svg>
			<svg x="150" y="100" width="50%" height="20%" viewBox="-3 -4 30 40" preserveAspectRatio="xMaxYMid slice"><circle id="slice" cx="15" cy="20" r="14"/></svg>
			<svg x="20" y="200" width="25%"><line id="inner" x2="100%" y2="10%"/>
				<svg x="10" width="50" height="50" viewBox="0 0 100 100"><circle id="deep" cx="50%" cy="50%" r="20%"/></svg></svg>
		</svg>`,
		"stretched": head + `viewBox="0 0 100 100" width="300" height="120" preserveAspectRatio="none">
			<circle id="o" cx="50" cy="50" r="40"/>
		</svg>`,
		"sized": head + `width="300" height="120">
			<circle id="o" cx="50%" cy="50%" r="10%"/><line id="l" x2="300" y2="120"/>
		</svg>`,
	}
}

// pictures are drawings with uses, symbols and rules, for readers that show what is
// seen. All strokes are black and what is not a stroke is white.
func pictures() map[string]string {
	const head = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" fill="none" stroke="black" `
	return map[string]string{
		"uses": head + `viewBox="0 0 200 200" width="200" height="200">
			<defs><g id="frond"><path d="M0 0C10 -10 10 -30 0 -40"/><circle r="5" cy="-45"/></g>
			<g id="pair"><use xlink:href="#frond"/><use href="#frond" transform="scale(-1 1)" x="-8"/></g></defs>
			<use href="#pair" x="50" y="100"/><use href="#pair" transform="translate(120 100) rotate(70)"/>
			<g transform="translate(100 190) scale(1.5 .8)"><use href="#pair"/></g>
		</svg>`,
		"symbols": head + `viewBox="0 0 300 200" width="300" height="200">
			<symbol id="s" viewBox="0 0 20 10"><ellipse cx="10" cy="5" rx="9" ry="4"/><path d="M1 5H19"/></symbol>
			<symbol id="t" viewBox="0 0 20 10" preserveAspectRatio="xMinYMin slice"><path d="M2 2L8 8"/></symbol>
			<use href="#s" x="10" y="10" width="100" height="50"/>
			<use href="#s" x="120" y="10" width="50" height="80"/>
			<use href="#t" x="200" y="10" width="40" height="80"/>
			<g transform="rotate(10) translate(30 110)"><use href="#s" width="120" height="30"/></g>
		</svg>`,
		"rules": `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 100" width="200" height="200">
			<style><![CDATA[
				/* a comment { } */ .st0 { fill:none; stroke:#000; } .st1{fill:none;stroke:none}
				#lone, g.cut > path { fill: none; stroke: black }
				.fronds .st1 { stroke: black !important }
				rect { fill: none; stroke: black; } rect.st1 { display: none }
				line[x2="90"] { stroke: black } path:first-child { stroke: black; fill: none }
				g + circle { stroke: black; fill: none } circle ~ ellipse { stroke: black; fill: none }
			]]></style>
			<path class="a st0" d="M5 5H95"/><path class="st1" d="M5 10H95"/>
			<g class="cut"><path class="x" d="M5 15H95"/><g><circle cx="9" cy="9" r="4" class="st1"/></g></g>
			<circle cx="50" cy="60" r="10" style="stroke-width:1.5"/>
			<ellipse cx="50" cy="60" rx="20" ry="5"/>
			<g class="fronds"><path id="lone" d="M5 20H95"/><path class="st1" style="stroke:none" d="M5 25H95"/></g>
			<rect x="5" y="30" width="20" height="9"/><rect class="st1" x="35" y="30" width="20" height="9"/>
			<g visibility="hidden" class="st0"><path d="M5 45H95"/><path d="M5 50H40" visibility="visible"/></g>
			<line x1="10" y1="80" x2="90" y2="80"/><line x1="10" y1="85" x2="91" y2="85"/>
			<g stroke="black" opacity="0"><path d="M5 90H95"/></g><g stroke="black"><path d="M5 95H95" stroke-width="0"/></g>
			<path d="M60 90H95" stroke="rgba(0,0,0,0)"/><path d="M60 70H95" stroke="currentColor"/>
		</svg>`,
		"meet": head + `viewBox="0 0 450 300" width="450" height="300">
			<defs><g id="smile"><rect x=".5" y=".5" width="29" height="39"/><g transform="translate(0, 5)"><circle cx="15" cy="15" r="10"/>
			<circle cx="12" cy="12" r="1.5"/><path d="M 10 19 A 8 8 0 0 0 20 19"/></g></g></defs>
			<g transform="translate(100,60)">
			<svg preserveAspectRatio="xMinYMin meet" viewBox="0 0 30 40" width="50" height="30"><use href="#smile"/></svg>
			<g transform="translate(70,0)"><svg preserveAspectRatio="xMidYMid meet" viewBox="0 0 30 40" width="50" height="30"><use href="#smile"/></svg></g>
			<g transform="translate(0,70)"><svg preserveAspectRatio="xMaxYMax meet" viewBox="0 0 30 40" width="50" height="30"><use href="#smile"/></svg></g></g>
			<g transform="translate(250,60)">
			<svg preserveAspectRatio="xMinYMin meet" viewBox="0 0 30 40" width="30" height="60"><use href="#smile"/></svg>
			<g transform="translate(50,0)"><svg preserveAspectRatio="xMidYMid meet" viewBox="0 0 30 40" width="30" height="60"><use href="#smile"/></svg></g>
			<g transform="translate(100,0)"><svg preserveAspectRatio="xMaxYMax meet" viewBox="0 0 30 40" width="30" height="60"><use href="#smile"/></svg></g></g>
		</svg>`,
	}
}
