#!/usr/bin/env bash
# Packs, then uses the packages as a stranger would: a fresh project outside the repository, an empty package cache, a folder as feed.
# usage, after a Release build: eng/smoke.sh
set -euo pipefail
cd "$(dirname "$0")/.."
repository=$PWD
away=$(mktemp -d)
trap 'rm -rf "$away"' EXIT
feed=$away/feed
version=$(sed -n 's:.*<VersionPrefix>\(.*\)</VersionPrefix>.*:\1:p' src/Directory.Build.props)
fail() { echo "smoke: $*" >&2; exit 1; }
holds() { grep -qE "(^|/)${2//./\\.}$" <<<"$1"; } # holds LISTING FILE

rm -rf artifacts/package
dotnet pack Handhold.slnx -c Release --no-build --nologo -v quiet
mkdir "$feed"
cp artifacts/package/release/*nupkg "$feed"

for package in Handhold Handhold.Tables Handhold.Plots Handhold.Photos Handhold.Cli; do
    listing=$(unzip -Z1 "$feed/$package.$version.nupkg")
    for entry in README.md LICENSE THIRD-PARTY-NOTICES.md icon.png "$package.dll" "$package.xml"; do
        holds "$listing" "$entry" || fail "$package lacks $entry"
    done
    listing=$(unzip -Z1 "$feed/$package.$version.snupkg")
    holds "$listing" "$package.pdb" || fail "$package lacks its symbols"
done

holds "$(unzip -Z1 "$feed/Handhold.Plots.$version.nupkg")" OFL.txt || fail "Handhold.Plots lacks the licence of its font"
holds "$(unzip -Z1 "$feed/Handhold.Cli.$version.nupkg")" licences/native-libraries.txt || fail "Handhold.Cli lacks the licences of its native libraries"

# Outside the repository none of its props apply. The machine's own sources still serve the dependencies.
export NUGET_PACKAGES=$away/packages DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1
mkdir "$away/fresh"
cd "$away/fresh"
cat >nuget.config <<END
<configuration><packageSources><add key="folder" value="$feed" /></packageSources></configuration>
END
cat >fresh.csproj <<END
<Project Sdk="Microsoft.NET.Sdk">
  <PropertyGroup>
    <OutputType>Exe</OutputType>
    <TargetFramework>net10.0</TargetFramework>
    <ImplicitUsings>enable</ImplicitUsings>
    <Nullable>enable</Nullable>
    <TreatWarningsAsErrors>true</TreatWarningsAsErrors>
  </PropertyGroup>
  <ItemGroup>
    <PackageReference Include="Handhold" Version="[$version]" />
    <PackageReference Include="Handhold.Tables" Version="[$version]" />
    <PackageReference Include="Handhold.Plots" Version="[$version]" />
  </ItemGroup>
</Project>
END

# The program is the first C# block of the root README.
sed -n '/^```csharp$/,/^```$/{/^```/!p;/^```$/q}' "$repository/README.md" >Program.cs
[ -s Program.cs ] || fail "README.md has no C# block"
dotnet run -c Release >said.txt || fail "the README's program does not run: $(cat said.txt)"
cat said.txt
[ "$(wc -l <said.txt)" -ge 3 ] || fail "the README's program said too little"
grep -qF "$feed" "$NUGET_PACKAGES/handhold/$version/.nupkg.metadata" || fail "Handhold did not come from the folder"

dotnet tool install Handhold.Cli --version "$version" --tool-path "$away/tools" --configfile nuget.config
"$away/tools/handhold" demo out
for kind in csv json png; do
    find out -name "*.$kind" -size +0 | grep -q . || fail "the demo wrote no .$kind file"
done
find out -type f | sort
echo "smoke: the packages work from a folder."
